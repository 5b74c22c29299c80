import type { MenuItemConstructorOptions } from 'electron';
import { formatRoute, type ScreenName, screenNames } from '../ui/shell/route.ts';
import { en } from '../ui/text/en.ts';

/** What the menus can do. */
export interface MenuActs {
  readonly show: () => void;
  readonly quit: () => void;
  /** Shows a screen of the page. */
  readonly go: (address: string) => void;
  /** Undefined where this machine has no way to start a program at login. */
  readonly login: { readonly on: () => boolean; readonly set: (on: boolean) => void } | undefined;
}

type Items = MenuItemConstructorOptions[];
const text = en.desktop;

/** The menu of the window: each screen by a number key. */
export function applicationMenu(acts: MenuActs): Items {
  return [
    {
      label: text.file,
      submenu: [...loginItem(acts), { label: text.quit, accelerator: 'CmdOrCtrl+Q', click: acts.quit }],
    },
    { label: text.go, submenu: screenNames.map((name, index) => screenItem(name, index, acts)) },
    {
      label: text.view,
      submenu: [
        { role: 'reload' },
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'togglefullscreen' },
      ],
    },
    { role: 'editMenu' },
  ];
}

function screenItem(name: ScreenName, index: number, { go }: MenuActs): MenuItemConstructorOptions {
  const address = formatRoute(name === 'live' ? { screen: name } : ({ screen: name, day: null } as never));
  // Nine keys; a screen beyond them is reached by the menu.
  const key = index < 9 ? { accelerator: `CmdOrCtrl+${index + 1}` } : {};
  return { label: en.shell.screens[name], ...key, click: () => go(address) };
}

/** The menu beside the clock. */
export function trayMenu(state: string, acts: MenuActs): Items {
  return [
    ...state.split('\n').map((label) => ({ label, enabled: false })),
    { type: 'separator' },
    { label: text.show, click: acts.show },
    ...loginItem(acts),
    { label: text.quit, click: acts.quit },
  ];
}

function loginItem({ login }: MenuActs): Items {
  if (login === undefined) return [];
  const { on, set } = login;
  return [
    { label: text.startAtLogin, type: 'checkbox', checked: on(), click: ({ checked }) => set(checked) },
  ];
}
