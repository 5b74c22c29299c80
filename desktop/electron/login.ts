import { resolve } from 'node:path';
import { app } from 'electron';
import type { HostOptions } from '../host/host.ts';
import { monitorArguments } from '../host/monitor-options.ts';
import { autostartFile, setAutostart, startsAtLogin } from './autostart.ts';
import type { MenuActs } from './menu.ts';

/** Starting at login: off unless a person switches it on. The program starts then with the same options. */
export function loginChoice(options: HostOptions): NonNullable<MenuActs['login']> {
  const args = [...(app.isPackaged ? [] : [app.getAppPath()]), ...monitorArguments(absolute(options))];
  if (process.platform !== 'linux')
    return {
      on: () => app.getLoginItemSettings({ args }).openAtLogin,
      set: (openAtLogin) => app.setLoginItemSettings({ openAtLogin, args }),
    };
  const file = autostartFile(app.getPath('appData'));
  return {
    on: () => startsAtLogin(file),
    set: (on) => setAutostart(file, [process.execPath, ...args], on),
  };
}

/** At login the program starts in another folder. */
function absolute(options: HostOptions): HostOptions {
  const { dataFolder, passwordFile } = options;
  return {
    ...options,
    dataFolder: resolve(dataFolder),
    passwordFile: passwordFile === undefined ? undefined : resolve(passwordFile),
  };
}
