import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export type ElectronFound =
  | { readonly ok: true; readonly binary: string }
  | { readonly ok: false; readonly reason: string };

/** What decides whether a window can be opened here. */
export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** 0: root; undefined where users have no numbers. */
  readonly userId: number | undefined;
  /** Folder of the installed electron package. */
  readonly packageFolder: string;
}

export const here: Surroundings = {
  platform: process.platform,
  environment: process.env,
  userId: process.getuid?.(),
  packageFolder: fileURLToPath(new URL('../../node_modules/electron', import.meta.url)),
};

/**
 * Finds Electron's program without loading its package, which would start a download.
 * @returns its path, or why no window can be opened, in words.
 */
export function findElectron({ platform, environment, userId, packageFolder }: Surroundings): ElectronFound {
  const binary = binaryPath(packageFolder, environment['ELECTRON_OVERRIDE_DIST_PATH']);
  if (binary === undefined || !existsSync(binary)) return none("Electron's program is not installed");
  if (platform !== 'linux') return { ok: true, binary };
  if (!environment['DISPLAY'] && !environment['WAYLAND_DISPLAY']) return none('there is no display');
  // Chromium refuses root unless its sandbox is switched off, which this project does not do.
  if (userId === 0) return none('Electron keeps its sandbox only for users other than root');
  return { ok: true, binary };
}

const none = (reason: string): ElectronFound => ({ ok: false, reason });

/** The package notes in path.txt where its program lies below the dist folder. */
function binaryPath(packageFolder: string, override: string | undefined): string | undefined {
  const note = join(packageFolder, 'path.txt');
  const below = existsSync(note) ? readFileSync(note, 'utf8').trim() : undefined;
  if (override) return join(override, below ?? 'electron');
  return below === undefined ? undefined : join(packageFolder, 'dist', below);
}
