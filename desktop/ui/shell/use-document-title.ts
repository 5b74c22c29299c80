import { useEffect } from 'react';
import { useLive } from '../store/live-store.ts';
import { documentTitle } from './document-title.ts';
import type { Route } from './route.ts';

/** Keeps the title of the page. */
export function useDocumentTitle({ screen }: Route): void {
  const title = useLive((state) => documentTitle(state, screen, window.location.host));
  useEffect(() => {
    document.title = title;
  }, [title]);
}
