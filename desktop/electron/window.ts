import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { HostOptions } from '../host/host.ts';
import { monitorArguments } from '../host/monitor-options.ts';
import { wordsOf } from '../host/replies.ts';
import { findElectron, here } from './find-electron.ts';

/** Main script of the window, once it is built. */
const builtScript = fileURLToPath(new URL('../../dist/electron/main.mjs', import.meta.url));

export type WindowStart =
  | { readonly ok: true; readonly window: ChildProcess }
  | { readonly ok: false; readonly reason: string };

/** Opens the monitor in a window of its own, as a process of its own, where this machine can. */
export async function openMonitorWindow(
  options: HostOptions,
  surroundings = here,
  script = builtScript,
): Promise<WindowStart> {
  const electron = findElectron(surroundings);
  if (!electron.ok) return electron;
  if (!existsSync(script)) return { ok: false, reason: 'the window is not built yet; run: npm run build' };
  const window = spawn(electron.binary, [script, ...monitorArguments(options)], {
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  try {
    await once(window, 'spawn');
    return { ok: true, window };
  } catch (thrown) {
    return { ok: false, reason: `Electron does not start: ${wordsOf(thrown)}` };
  }
}
