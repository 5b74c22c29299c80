import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Command } from 'commander';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { createHost } from '../host/host.ts';
import { hostOptions, withMonitorOptions } from '../host/monitor-options.ts';
import { newCommand } from '../host/new-command.ts';
import { createDesk } from './desk.ts';
import { openDoor } from './door.ts';
import { guardContents, guardSession } from './guards.ts';
import { loginChoice } from './login.ts';
import { type MainWindow, openMainWindow } from './main-window.ts';
import { applicationMenu, type MenuActs } from './menu.ts';
import { pageScheme } from './page-address.ts';
import { pageResponse } from './page-files.ts';
import { openSaveDoor } from './save.ts';
import { notify, openTray } from './tray.ts';
import { schemes } from './window-options.ts';

/** Where things stand beside this file once it is bundled. */
const beside = (path: string) => new URL(path, import.meta.url);
const pageFolder = fileURLToPath(beside('../web'));
const preload = fileURLToPath(beside('./preload.cjs'));

async function run(command: Command): Promise<void> {
  protocol.registerSchemesAsPrivileged(schemes);
  app.enableSandbox();
  app.on('web-contents-created', (_event, contents) => guardContents(contents));
  await app.whenReady();

  guardSession(session.defaultSession);
  protocol.handle(pageScheme, ({ url }) => pageResponse(pageFolder, url));
  const options = hostOptions(command);
  const host = createHost({
    ...options,
    historyWorker: beside('./history-worker.mjs'),
    importWorker: beside('./import-worker.mjs'),
    tuningWorker: beside('./tuning-worker.mjs'),
    sweepWorker: beside('./sweep-worker.mjs'),
  });
  openDoor(ipcMain, host, () => BrowserWindow.getAllWindows());
  openSaveDoor(ipcMain, dialog);
  closeBeforeQuit(host.close);

  let window: MainWindow | undefined;
  const acts: MenuActs = {
    show: () => window?.show(),
    go: (address) => window?.go(address),
    quit: () => app.quit(),
    login: loginChoice(options),
  };
  app.on('second-instance', acts.show);
  app.on('activate', acts.show);
  Menu.setApplicationMenu(Menu.buildFromTemplate(applicationMenu(acts)));
  host.listen(createDesk({ show: openTray(acts), notify: (news) => notify(news, acts.show) }));
  window = await openMainWindow(preload, join(app.getPath('userData'), 'window-place.json'));
}

/** The host goes before the program does, however that is quit. */
function closeBeforeQuit(close: () => Promise<void>): void {
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void close().finally(() => {
      closed = true;
      app.quit();
    });
  });
  app.on('window-all-closed', () => app.quit());
}

const command = withMonitorOptions(newCommand('flatwater', 'The monitor in a window of its own.'))
  .allowExcessArguments()
  .allowUnknownOption();

if (app.requestSingleInstanceLock()) await run(command.parse(process.argv, { from: 'electron' }));
else app.quit();
