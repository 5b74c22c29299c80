import { fileURLToPath } from 'node:url';
import type { Command } from 'commander';
import { app, BrowserWindow, ipcMain, protocol, session } from 'electron';
import { createHost } from '../host/host.ts';
import { hostOptions, withMonitorOptions } from '../host/monitor-options.ts';
import { newCommand } from '../host/new-command.ts';
import { openDoor } from './door.ts';
import { guardContents, guardSession } from './guards.ts';
import { pageAddress, pageScheme } from './page-address.ts';
import { pageResponse } from './page-files.ts';
import { schemes, windowOptions } from './window-options.ts';

/** Where things stand beside this file once it is bundled. */
const beside = (path: string) => new URL(path, import.meta.url);
const pageFolder = fileURLToPath(beside('../web'));
const preload = fileURLToPath(beside('./preload.cjs'));

async function openWindow(): Promise<void> {
  const window = new BrowserWindow(windowOptions(preload));
  window.once('ready-to-show', () => window.show());
  await window.loadURL(pageAddress);
}

function raiseWindow(): void {
  const [window] = BrowserWindow.getAllWindows();
  if (window?.isMinimized() === true) window.restore();
  window?.focus();
}

async function run(command: Command): Promise<void> {
  protocol.registerSchemesAsPrivileged(schemes);
  app.enableSandbox();
  app.on('web-contents-created', (_event, contents) => guardContents(contents));
  app.on('second-instance', raiseWindow);
  await app.whenReady();

  guardSession(session.defaultSession);
  protocol.handle(pageScheme, ({ url }) => pageResponse(pageFolder, url));
  const host = createHost({ ...hostOptions(command), historyWorker: beside('./history-worker.mjs') });
  openDoor(ipcMain, host, () => BrowserWindow.getAllWindows());
  app.on('window-all-closed', () => void host.close().finally(() => app.quit()));
  await openWindow();
}

const command = withMonitorOptions(newCommand('flatwater', 'The monitor in a window of its own.'))
  .allowExcessArguments()
  .allowUnknownOption();

if (app.requestSingleInstanceLock()) await run(command.parse(process.argv, { from: 'electron' }));
else app.quit();
