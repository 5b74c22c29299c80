import { chmodSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findElectron, type Surroundings } from '../../../desktop/electron/find-electron.ts';
import { openMonitorWindow } from '../../../desktop/electron/window.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const top = temporaryFolder('electron').path;
const packageFolder = join(top, 'electron');
const elsewhere = join(top, 'elsewhere');
const script = join(top, 'main.mjs');
beforeAll(() => {
  for (const folder of [join(packageFolder, 'dist'), elsewhere]) mkdirSync(folder, { recursive: true });
  writeFileSync(join(packageFolder, 'path.txt'), 'electron');
  writeFileSync(join(packageFolder, 'dist', 'electron'), 'no program');
  writeFileSync(join(elsewhere, 'electron'), '#!/bin/sh\nexit 0\n');
  chmodSync(join(elsewhere, 'electron'), 0o755);
  writeFileSync(script, '');
});
afterAll(() => rmSync(top, { recursive: true }));

const desk: Surroundings = {
  platform: 'linux',
  environment: { DISPLAY: ':0' },
  userId: 1000,
  packageFolder: '',
};
const around = (change: Partial<Surroundings> = {}): Surroundings => ({ ...desk, packageFolder, ...change });

describe('findElectron', () => {
  it('finds the program where its package notes it', () => {
    expect(findElectron(around())).toEqual({ ok: true, binary: join(packageFolder, 'dist', 'electron') });
  });

  it('finds it where the environment says, with or without a note', () => {
    const environment = { WAYLAND_DISPLAY: 'wayland-0', ELECTRON_OVERRIDE_DIST_PATH: elsewhere };
    for (const folder of [packageFolder, join(top, 'nothing')])
      expect(findElectron(around({ environment, packageFolder: folder }))).toEqual({
        ok: true,
        binary: join(elsewhere, 'electron'),
      });
  });

  it('needs no display where windows need none', () => {
    expect(findElectron(around({ platform: 'darwin', environment: {} })).ok).toBe(true);
  });

  it.each([
    ['no program', { packageFolder: join(top, 'nothing') }, 'not installed'],
    [
      'a program that is gone',
      { environment: { ELECTRON_OVERRIDE_DIST_PATH: '/nonexistent' } },
      'not installed',
    ],
    ['no display', { environment: {} }, 'no display'],
    ['root', { userId: 0 }, 'root'],
  ] as const)('says why there is no window with %s', (_what, change, words) => {
    expect(findElectron(around(change))).toEqual({ ok: false, reason: expect.stringContaining(words) });
  });
});

describe('openMonitorWindow', () => {
  const options = { brokerUrl: 'mqtt://127.0.0.1:1883', dataFolder: 'data' };

  it('starts the program', async () => {
    const environment = { DISPLAY: ':0', ELECTRON_OVERRIDE_DIST_PATH: elsewhere };
    const start = await openMonitorWindow(options, around({ environment }), script);
    expect(start.ok && start.window.spawnargs.slice(1)).toEqual([
      script,
      '--broker',
      'mqtt://127.0.0.1:1883',
      '--data',
      'data',
    ]);
  });

  it('says in words that the program does not start', async () => {
    expect(await openMonitorWindow(options, around(), script)).toEqual({
      ok: false,
      reason: expect.stringContaining('does not start'),
    });
  });

  it('says what to do when the window is not built', async () => {
    expect(await openMonitorWindow(options, around(), join(top, 'none.mjs'))).toEqual({
      ok: false,
      reason: expect.stringContaining('npm run build'),
    });
  });
});
