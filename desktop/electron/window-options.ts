import type { BrowserWindowConstructorOptions, CustomScheme } from 'electron';
import { pageScheme } from './page-address.ts';
import type { Bounds } from './window-place.ts';

/**
 * The window: a page without Node, in a sandbox, in a world apart from its preload script.
 * @param preload - Path of the bundled preload script.
 * @param bounds - Where it stood before; undefined: in the middle.
 */
export function windowOptions(preload: string, bounds?: Bounds): BrowserWindowConstructorOptions {
  return {
    title: 'flatwater',
    width: 1280,
    height: 860,
    ...bounds,
    minWidth: 360,
    minHeight: 480,
    show: false,
    autoHideMenuBar: true,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  };
}

/** What the page's scheme may do: be an origin of its own, under the rules of a secure page. */
export const schemes: CustomScheme[] = [
  { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
];
