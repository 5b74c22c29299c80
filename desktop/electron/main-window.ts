import { app, BrowserWindow, screen } from 'electron';
import { goChannel } from './channels.ts';
import { pageAddress } from './page-address.ts';
import { windowOptions } from './window-options.ts';
import { placeOn, readPlace, writePlace } from './window-place.ts';

/** The one window: it stands where it stood before, and closing it hides it until the program is quit. */
export interface MainWindow {
  show(): void;
  /** Shows a screen of the page. */
  go(address: string): void;
}

/**
 * @param preload - Path of the bundled preload script.
 * @param placeFile - Where its place is kept.
 */
export async function openMainWindow(preload: string, placeFile: string): Promise<MainWindow> {
  const before = readPlace(placeFile);
  const areas = screen.getAllDisplays().map(({ workArea }) => workArea);
  const window = new BrowserWindow(
    windowOptions(preload, before === undefined ? undefined : placeOn(areas, before.bounds)),
  );
  let quitting = false;
  app.on('before-quit', () => {
    quitting = true;
  });
  window.once('ready-to-show', () => {
    if (before?.maximized === true) window.maximize();
    window.show();
  });
  window.on('close', (event) => {
    writePlace(placeFile, { bounds: window.getNormalBounds(), maximized: window.isMaximized() });
    if (quitting) return;
    event.preventDefault();
    window.hide();
  });
  await window.loadURL(pageAddress);

  function show(): void {
    if (window.isMinimized()) window.restore();
    window.show();
    window.focus();
  }
  return {
    show,
    go(address) {
      show();
      window.webContents.send(goChannel, address);
    },
  };
}
