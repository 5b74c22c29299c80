import { beforeAll, describe, expect, it, vi } from 'vitest';

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
  class BrowserWindow {
    readonly options: unknown;
    readonly webContents = { isDestroyed: () => false, send: vi.fn() };
    readonly once = vi.fn();
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
      on: appEvents.on,
    },
    BrowserWindow,
    ipcMain: { handle: (channel: string, handler: Handler) => handle.ipc.set(channel, handler) },
    protocol: {
      registerSchemesAsPrivileged: note('registerSchemesAsPrivileged'),
      handle: (scheme: string, handler: Handler) => handle.protocol.set(scheme, handler),
    },
    session: { defaultSession: session },
  };
  return { told, note, module, windows, handle, appEvents: appEvents.handlers, on };
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
  readonly options: { readonly show: boolean; readonly webPreferences: Record<string, unknown> };
  readonly webContents: { readonly send: ReturnType<typeof vi.fn> };
  readonly focus: ReturnType<typeof vi.fn>;
  readonly restore: ReturnType<typeof vi.fn>;
}
const window = () => electron.windows[0] as FakeWindow;

beforeAll(async () => {
  process.argv = ['electron', 'main.mjs', '--broker', 'mqtt://127.0.0.1:1883', '--data', 'data'];
  await import('../../../desktop/electron/main.ts');
});

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

  it('closes the host before the program ends', async () => {
    (electron.appEvents.get('window-all-closed') as () => void)();
    await vi.waitFor(() => expect(electron.module.app.quit).toHaveBeenCalled(), 10_000);
    expect(close).toHaveBeenCalledOnce();
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
