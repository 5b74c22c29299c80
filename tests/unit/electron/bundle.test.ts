import { execFileSync, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createHistory } from '../../../desktop/host/history.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const configFile = fileURLToPath(new URL('../../../desktop/vite.electron.config.ts', import.meta.url));
const outDir = temporaryFolder('bundle').path;
const path = (name: string) => join(outDir, name);

beforeAll(async () => {
  for (const mode of ['main', 'preload'])
    await build({ configFile, mode, logLevel: 'silent', build: { outDir } });
});
afterAll(() => rmSync(outDir, { recursive: true }));

const scripts = () => readdirSync(outDir).filter((name) => /\.[cm]js$/.test(name));

/** What a built script still takes from outside itself. */
function outside(name: string): string[] {
  const text = readFileSync(path(name), 'utf8');
  const imports = [
    ...text.matchAll(/^(?:import|export)\b[^'"]*?from\s*['"]([^'"]+)['"]|^import\s*['"]([^'"]+)['"]/gm),
  ];
  return [...new Set(imports.map(([, from, bare]) => from ?? bare ?? ''))];
}

describe('the built window', () => {
  it('has a main script, a preload script and a worker, each of which Node can parse', () => {
    expect(scripts()).toEqual(expect.arrayContaining(['history-worker.mjs', 'main.mjs', 'preload.cjs']));
    for (const name of scripts()) execFileSync(process.execPath, ['--check', path(name)]);
  });

  it('brings its libraries along', () => {
    const known = new Set(['electron', ...builtinModules, ...builtinModules.map((name) => `node:${name}`)]);
    const foreign = scripts()
      .flatMap(outside)
      .filter((from) => !from.startsWith('./') && !known.has(from) && from !== 'node:sqlite');
    expect(outside('main.mjs')).toContain('electron');
    expect(foreign).toEqual([]);
  });

  it('asks for nothing but Electron in the preload script', () => {
    const required = [...readFileSync(path('preload.cjs'), 'utf8').matchAll(/require\(([^)]*)\)/g)];
    expect(required.map(([, what]) => what)).toEqual(['"electron"']);
  });

  it('answers questions in its worker', async () => {
    const history = createHistory({
      dataFolder: outDir,
      worker: pathToFileURL(path('history-worker.mjs')),
      timeoutMs: 60_000,
      onRemarks: () => undefined,
    });
    const reply = await history.ask('days', { site: 'nowhere' });
    expect(reply).toMatchObject({ ok: false, problem: { text: expect.stringContaining('no log') } });
    await history.close();
  });

  it('opens its window when it runs', () => {
    // Electron's part is played by a few lines; the rest is the built script as it is.
    writeFileSync(
      path('electron-part.mjs'),
      `const told = (name) => (...args) => console.log(name, JSON.stringify(args));
       export const app = { requestSingleInstanceLock: () => true, enableSandbox: told('sandbox'), on() {},
         whenReady: async () => {}, quit() {}, isPackaged: false, getAppPath: () => '.', getPath: () => '.', getLoginItemSettings: () => ({}) };
       export class Tray { on() {} setToolTip(text) { console.log('tray', text); } setContextMenu() {} }
       export class Notification {}
       export const Menu = { setApplicationMenu: told('menu'), buildFromTemplate: (items) => items.length };
       export const nativeImage = { createFromBitmap: () => ({}) };
       export const screen = { getAllDisplays: () => [] };
       export const dialog = {};
       export class BrowserWindow {
         webContents = { isDestroyed: () => true };
         once() {}
         on() {}
         async loadURL(address) { console.log('loads', address); setTimeout(() => process.exit(0)); }
         static getAllWindows() { return []; }
       }
       export const ipcMain = { handle: told('handles') };
       export const protocol = { registerSchemesAsPrivileged() {}, handle: (scheme) => console.log('serves', scheme) };
       export const session = { defaultSession: { setPermissionRequestHandler() {}, setPermissionCheckHandler() {},
         setDevicePermissionHandler() {} } };`,
    );
    writeFileSync(
      path('hooks.mjs'),
      `import { registerHooks } from 'node:module';
       registerHooks({ resolve: (name, context, next) => name === 'electron'
         ? { url: new URL('./electron-part.mjs', import.meta.url).href, shortCircuit: true } : next(name, context) });`,
    );
    const { stdout: printed, stderr } = spawnSync(
      process.execPath,
      ['--import', pathToFileURL(path('hooks.mjs')).href, path('main.mjs'), '--data', outDir],
      { encoding: 'utf8', timeout: 60_000 },
    );
    expect(stderr).toBe('');
    expect(printed).toContain('loads app://flatwater/index.html');
    expect(printed).toContain('serves app');
    expect(printed).toContain('tray No controller was heard yet');
    expect(printed).toContain('handles ["monitor-call"');
  });
});
