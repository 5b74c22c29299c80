import type { Session, WebContents } from 'electron';
import { isOwnPage } from './page-address.ts';

/** Keeps a window on its own page: it goes nowhere else, opens nothing and embeds nothing. */
export function guardContents(contents: WebContents): void {
  const stay = (event: { preventDefault(): void; url: string }) => {
    if (!isOwnPage(event.url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** The page needs no permission of the machine, so it is given none. Unasked, Electron grants them. */
export function guardSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}
