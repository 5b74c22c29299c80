import './styles/components.ts';
import './styles/theme.css';
import './styles/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { z } from 'zod';
import { App } from './app.tsx';
import { openDoor, type Page } from './door.ts';
import { startFeed } from './store/feed.ts';

// The page may not make code out of text, and so neither may its checks.
z.config({ jitless: true });

const root = document.getElementById('root');
if (root !== null) {
  const page: Page = { flatwater: (window as Partial<Page>).flatwater, location: window.location };
  const feed = startFeed(openDoor(page), () => performance.now());
  createRoot(root).render(
    <StrictMode>
      <App feed={feed} />
    </StrictMode>,
  );
}
