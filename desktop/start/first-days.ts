import { mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { logPath } from '../../controller/log/log.ts';
import type { Site } from '../../shared-types/site.ts';
import { keepPlant } from '../../sim/device/plant-state-file.ts';
import { recordHistory } from '../../sim/history.ts';
import { historyStartMs } from './calendar.ts';
import { plantStatePath } from './places.ts';

/** Seed of weather and noise. The device begins with the same, so that the sky goes on. */
const seed = 1;

/**
 * Records the simulated days before `untilMs` [UTC ms] into the data folder.
 *
 * They are recorded aside and moved into place with the log last, so that a start that is broken off
 * leaves no log, and the next start records them anew.
 *
 * @throws when the folder cannot be written.
 */
export function recordFirstDays(site: Site, dataFolder: string, untilMs: number): void {
  const aside = join(dataFolder, '.recording');
  rmSync(aside, { recursive: true, force: true });
  const fromMs = historyStartMs(untilMs, site.timeZone);
  const { plantState } = recordHistory({ site, dataFolder: aside, fromMs, toMs: untilMs, seed });
  keepPlant(plantStatePath(aside, site.name), plantState);
  moveInto(join(dataFolder, site.name), join(aside, site.name), basename(logPath('', site.name)));
  rmSync(aside, { recursive: true });
}

/** Moves all files of a folder into another, the one called `last` at the end. */
function moveInto(target: string, source: string, last: string): void {
  mkdirSync(target, { recursive: true });
  // What a lost log left beside itself belongs to that one and would spoil this one.
  for (const name of readdirSync(target)) if (name.startsWith(`${last}-`)) rmSync(join(target, name));
  const names = readdirSync(source).sort((a, b) => Number(a === last) - Number(b === last));
  for (const name of names) renameSync(join(source, name), join(target, name));
}
