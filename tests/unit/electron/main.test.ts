import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { siteName, snapshot } from '../host/samples.ts';

type Handler = (...args: never[]) => unknown;

/** Stands in for Electron, whose program is not needed to see what it is told. */
const electron = vi.hoisted(() => {
  /** What Electron was told, call by call; kept for the whole file, since it is told once. */
  const told: Record<string, unknown[][]> = {};
  const note =
    (name: string) =>
    (...args: unknown[]) => {
      told[name] = [...(told[name] ?? []), args];
    };
  const on = () => {
    const handlers = new Map<string, Handler>();
    return { handlers, on: (name: string, handler: Handler) => handlers.set(name, handler) };
  };
  const appEvents = on();
  const handle = { ipc: new Map<string, Handler>(), protocol: new Map<string, Handler>() };
  const windows: unknown[] = [];
  const placeFile = `${process.env['TMPDIR'] ?? '/tmp'}/flatwater-window-${process.pid}`;
  const notifications: { options: { title: string; body: string }; click: () => void }[] = [];
  const menus: unknown[] = [];
  class Notification {
    static isSupported = vi.fn(() => true);
    readonly options: { title: string; body: string };
    readonly show = vi.fn();
    constructor(options: { title: string; body: string }) {
      this.options = options;
    }
    on(_name: string, click: () => void) {
      notifications.push({ options: this.options, click });
    }
  }
  const tray = {
    setToolTip: note('setToolTip'),
    setContextMenu: note('setContextMenu'),
    on: note('trayOn'),
  };
  class Tray {
    constructor() {
      // biome-ignore lint/correctness/noConstructorReturn: every tray is the one that the tests look at
      return tray;
    }
  }
  class BrowserWindow {
    readonly options: unknown;
    readonly webContents = { isDestroyed: () => false, send: vi.fn() };
    readonly once = note('windowOnce');
    readonly on = note('windowOn');
    readonly show = vi.fn();
    readonly hide = vi.fn();
    readonly maximize = vi.fn();
    readonly getNormalBounds = () => ({ x: 10, y: 20, width: 800, height: 600 });
    readonly isMaximized = () => true;
    readonly loadURL = async (url: string) => note('loadURL')(url);
    readonly focus = vi.fn();
    readonly restore = vi.fn();
    readonly isMinimized = () => true;
    static readonly getAllWindows = () => windows;
    constructor(options: unknown) {
      this.options = options;
      windows.push(this);
    }
  }
  const session = {
    setPermissionRequestHandler: note('setPermissionRequestHandler'),
    setPermissionCheckHandler: note('setPermissionCheckHandler'),
    setDevicePermissionHandler: note('setDevicePermissionHandler'),
  };
  const module = {
    app: {
      requestSingleInstanceLock: vi.fn(() => true),
      enableSandbox: note('enableSandbox'),
      whenReady: async () => undefined,
      quit: vi.fn(),
      isPackaged: false,
      getAppPath: () => '/flatwater',
      getPath: (name: string) => `${placeFile}/${name}`,
      getLoginItemSettings: () => ({ openAtLogin: false }),
      setLoginItemSettings: vi.fn(),
      on: appEvents.on,
    },
    BrowserWindow,
    Notification,
    Tray,
    Menu: {
      setApplicationMenu: (menu: unknown) => menus.push(menu),
      buildFromTemplate: (template: unknown) => template,
    },
    nativeImage: { createFromBitmap: (bitmap: Buffer, size: unknown) => ({ bitmap, size }) },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }] },
    dialog: { showSaveDialog: vi.fn() },
    ipcMain: { handle: (channel: string, handler: Handler) => handle.ipc.set(channel, handler) },
    protocol: {
      registerSchemesAsPrivileged: note('registerSchemesAsPrivileged'),
      handle: (scheme: string, handler: Handler) => handle.protocol.set(scheme, handler),
    },
    session: { defaultSession: session },
  };
  return {
    told,
    note,
    module,
    windows,
    handle,
    appEvents: appEvents.handlers,
    on,
    placeFile,
    notifications,
    menus,
  };
});
vi.mock('electron', () => ({ ...electron.module, default: electron.module }));

const call = vi.fn(async () => ({ ok: true, result: [] }));
const close = vi.fn(async () => undefined);
const listeners: ((event: unknown) => void)[] = [];
vi.mock('../../../desktop/host/host.ts', () => ({
  createHost: () => ({
    call,
    close,
    listen: (listener: (event: unknown) => void) => listeners.push(listener),
  }),
}));

interface FakeWindow {
  readonly show: ReturnType<typeof vi.fn>;
  readonly hide: ReturnType<typeof vi.fn>;
  readonly maximize: ReturnType<typeof vi.fn>;
  readonly options: { readonly show: boolean; readonly webPreferences: Record<string, unknown> };
  readonly webContents: { readonly send: ReturnType<typeof vi.fn> };
  readonly focus: ReturnType<typeof vi.fn>;
  readonly restore: ReturnType<typeof vi.fn>;
}
const window = () => electron.windows[0] as FakeWindow;

beforeAll(async () => {
  process.argv = ['electron', 'main.mjs', '--broker', 'mqtt://127.0.0.1:1883', '--data', 'data'];
  mkdirSync(`${electron.placeFile}/userData`, { recursive: true });
  await import('../../../desktop/electron/main.ts');
});
afterAll(() => rmSync(electron.placeFile, { recursive: true, force: true }));

describe('the window', () => {
  it('has no Node, a sandbox and a world apart from its preload script', () => {
    expect(electron.told['enableSandbox']).toHaveLength(1);
    expect(electron.windows).toHaveLength(1);
    expect(window().options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      preload: expect.stringMatching(/preload\.cjs$/),
    });
  });

  it('loads its own page, under a secure scheme of its own', async () => {
    expect(electron.told['loadURL']).toEqual([['app://flatwater/index.html']]);
    expect(electron.told['registerSchemesAsPrivileged']).toEqual([
      [[{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } }]],
    ]);
    const serve = electron.handle.protocol.get('app') as unknown as (request: {
      url: string;
    }) => Promise<Response>;
    expect((await serve({ url: 'app://elsewhere/' })).status).toBe(404);
  });

  it('is given no permission', () => {
    const given = (name: string) => electron.told[name]?.[0]?.[0] as (...args: unknown[]) => unknown;
    const answer = vi.fn();
    given('setPermissionRequestHandler')({}, 'geolocation', answer);
    expect(answer).toHaveBeenCalledWith(false);
    expect(given('setPermissionCheckHandler')()).toBe(false);
    expect(given('setDevicePermissionHandler')()).toBe(false);
  });

  it('comes to the front when the program is started again', () => {
    (electron.appEvents.get('second-instance') as () => void)();
    expect(window().restore).toHaveBeenCalledOnce();
    expect(window().focus).toHaveBeenCalledOnce();
  });

  it('is shown when it is ready, hides when it is closed, and keeps its place', () => {
    const ready = electron.told['windowOnce']?.[0]?.[1] as () => void;
    window().show.mockClear();
    ready();
    expect(window().show).toHaveBeenCalledOnce();
    expect(window().maximize).not.toHaveBeenCalled();
    const event = { preventDefault: vi.fn() };
    closing()(event);
    expect(event.preventDefault).toHaveBeenCalledOnce();
    expect(window().hide).toHaveBeenCalledOnce();
    expect(JSON.parse(readFileSync(`${electron.placeFile}/userData/window-place.json`, 'utf8'))).toEqual({
      bounds: { x: 10, y: 20, width: 800, height: 600 },
      maximized: true,
    });
  });
});

const closing = () =>
  electron.told['windowOn']?.find(([name]) => name === 'close')?.[1] as (event: unknown) => void;

interface Item {
  readonly label?: string;
  readonly accelerator?: string;
  readonly submenu?: readonly Item[];
  readonly checked?: boolean;
  readonly click?: (item: { checked: boolean }) => void;
}
const itemOf = (items: readonly Item[], label: string): Item =>
  items.flatMap((item) => [item, ...(item.submenu ?? [])]).find((item) => item.label === label) as Item;
const menu = () => electron.menus[0] as readonly Item[];
const trayItems = () => electron.told['setContextMenu']?.at(-1)?.[0] as readonly Item[];

describe('its menus', () => {
  it('lead to each screen by a number key', () => {
    const days = itemOf(menu(), 'Days');
    expect(days.accelerator).toBe('CmdOrCtrl+2');
    days.click?.({ checked: false });
    expect(window().webContents.send).toHaveBeenCalledWith('monitor-go', '#/days');
  });

  it('show the window and quit, beside the clock too', () => {
    window().show.mockClear();
    itemOf(trayItems(), 'Show the window').click?.({ checked: false });
    expect(window().show).toHaveBeenCalledOnce();
    electron.module.app.quit.mockClear();
    itemOf(trayItems(), 'Quit').click?.({ checked: false });
    itemOf(menu(), 'Quit').click?.({ checked: false });
    expect(electron.module.app.quit).toHaveBeenCalledTimes(2);
  });

  it.runIf(process.platform === 'linux')('start the program at login only when a person wants it', () => {
    const file = `${electron.placeFile}/appData/autostart/flatwater-monitor.desktop`;
    expect(itemOf(menu(), 'Start when I log in').checked).toBe(false);
    itemOf(menu(), 'Start when I log in').click?.({ checked: true });
    expect(readFileSync(file, 'utf8')).toContain(
      `"/flatwater" "--broker" "mqtt://127.0.0.1:1883" "--data" "${process.cwd()}/data"`,
    );
    itemOf(menu(), 'Start when I log in').click?.({ checked: false });
    expect(() => readFileSync(file)).toThrow();
  });
});

describe('its place beside the clock', () => {
  const live = (alarms: readonly unknown[]) => ({
    kind: 'live',
    live: { name: siteName, status: null, site: null, snapshotAgeMs: 0, snapshot: withAlarms(alarms) },
  });
  const withAlarms = (alarms: readonly unknown[]) => {
    const message = snapshot();
    return { ...message, decision: { ...message.decision, phase: 'resting', alarms } };
  };
  const frost = { code: 'frost-danger', state: 'unacknowledged', active: true, sinceMs: 1 };
  const tell = (event: unknown) => {
    for (const listener of listeners) listener(event);
  };

  it('tells what the loop does, and a new alarm by a notification that leads to the window', () => {
    expect(electron.told['setToolTip']).toEqual([['No controller was heard yet']]);
    tell(live([]));
    expect(electron.told['setToolTip']?.at(-1)).toEqual([`${siteName}: Resting`]);
    expect(electron.notifications).toHaveLength(0);
    tell(live([frost]));
    expect(electron.told['setToolTip']?.at(-1)).toEqual([`${siteName}: Resting, 1 alarm`]);
    expect(electron.notifications).toHaveLength(1);
    expect(electron.notifications[0]?.options.title).toBe('Frost, and water in the pan');
    window().show.mockClear();
    electron.notifications[0]?.click();
    expect(window().show).toHaveBeenCalledOnce();
  });

  it('does without notifications where there are none', () => {
    electron.module.Notification.isSupported.mockReturnValueOnce(false);
    tell(live([{ ...frost, sinceMs: 2 }]));
    expect(electron.notifications).toHaveLength(1);
    expect(electron.told['setToolTip']?.at(-1)).toEqual([`${siteName}: Resting, 1 alarm`]);
  });
});

describe('its contents', () => {
  const contents = electron.on();
  beforeAll(() => {
    const created = electron.appEvents.get('web-contents-created') as (
      event: unknown,
      contents: unknown,
    ) => void;
    created({}, { on: contents.on, setWindowOpenHandler: electron.note('setWindowOpenHandler') });
  });
  const prevented = (name: string, url: string) => {
    const preventDefault = vi.fn();
    const handler = contents.handlers.get(name) as (event: unknown) => void;
    handler({ preventDefault, url });
    return preventDefault.mock.calls.length > 0;
  };

  it.each(['will-navigate', 'will-redirect', 'will-frame-navigate'])('go nowhere else: %s', (name) => {
    expect(prevented(name, 'https://example.org/')).toBe(true);
    expect(prevented(name, 'file:///etc/hosts')).toBe(true);
    expect(prevented(name, 'app://flatwater/index.html')).toBe(false);
  });

  it('embed nothing and open nothing', () => {
    expect(prevented('will-attach-webview', 'app://flatwater/index.html')).toBe(true);
    const open = electron.told['setWindowOpenHandler']?.[0]?.[0] as () => unknown;
    expect(open()).toEqual({ action: 'deny' });
  });
});

describe('its door', () => {
  const ask = (frame: unknown, raw: unknown, mainFrame = frame) => {
    const handler = electron.handle.ipc.get('monitor-call') as (
      event: unknown,
      raw: unknown,
    ) => Promise<unknown>;
    return handler({ senderFrame: frame, sender: { mainFrame } }, raw);
  };
  const page = { url: 'app://flatwater/index.html' };

  it('answers the page', async () => {
    expect(await ask(page, { id: 5, method: 'sites', params: {} })).toEqual({ id: 5, ok: true, result: [] });
  });

  it.each([
    ['another page', { url: 'https://example.org/' }, undefined],
    ['a page of a like name', { url: 'app://flatwater.example/' }, undefined],
    ['a frame inside the page', page, { url: page.url }],
    ['a frame that is gone', null, undefined],
  ])('does not answer %s', async (_who, frame, mainFrame) => {
    call.mockClear();
    const wire = await ask(frame, { id: 5, method: 'sites', params: {} }, mainFrame ?? frame);
    expect(wire).toMatchObject({ ok: false, problem: { text: expect.stringContaining('Only the monitor') } });
    expect(call).not.toHaveBeenCalled();
  });

  it.each([
    [null],
    ['sites'],
    [{ id: 1, method: '__proto__', params: {} }],
    [{ id: 1, method: 'quit', params: {} }],
  ])('refuses %j in words', async (raw) => {
    call.mockClear();
    expect(await ask(page, raw)).toMatchObject({ ok: false, problem: { severity: 'error' } });
    expect(call).not.toHaveBeenCalled();
  });

  it('hands events to the window', () => {
    for (const listener of listeners) listener({ kind: 'host' });
    expect(window().webContents.send).toHaveBeenCalledWith('monitor-event', { kind: 'host' });
  });

  it('closes the host before the program ends, and the window for good', async () => {
    electron.module.app.quit.mockClear();
    (electron.appEvents.get('before-quit') as () => void)();
    const closed = { preventDefault: vi.fn() };
    closing()(closed);
    expect(closed.preventDefault).not.toHaveBeenCalled();
    const quit = electron.appEvents.get('will-quit') as (event: unknown) => void;
    const first = { preventDefault: vi.fn() };
    quit(first);
    expect(first.preventDefault).toHaveBeenCalledOnce();
    await vi.waitFor(() => expect(electron.module.app.quit).toHaveBeenCalledOnce(), 10_000);
    expect(close).toHaveBeenCalledOnce();
    const second = { preventDefault: vi.fn() };
    quit(second);
    expect(second.preventDefault).not.toHaveBeenCalled();
  });
});

describe('a second start', () => {
  it('leaves it to the first', async () => {
    vi.resetModules();
    electron.module.app.quit.mockClear();
    electron.module.app.requestSingleInstanceLock.mockReturnValueOnce(false);
    await import('../../../desktop/electron/main.ts');
    expect(electron.module.app.quit).toHaveBeenCalledOnce();
    expect(electron.windows).toHaveLength(1);
  });
});
