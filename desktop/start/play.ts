import { basename, dirname, extname, join, resolve } from 'node:path';
import { formatSiteFault, readSiteFile } from '../../controller/site-file.ts';
import type { Site } from '../../shared-types/site.ts';
import { readScenario, readScenarioFile } from '../../sim/scenario/read.ts';
import { firstInstantMs } from './calendar.ts';
import type { StartOptions } from './options.ts';
import { demoSiteFile } from './places.ts';

/** What is simulated: the demo, or a scenario whose log lies in a folder of its own. */
export interface Play {
  readonly siteFile: string;
  readonly site: Site;
  readonly dataFolder: string;
  /** Where the calendar begins in a new log [UTC ms]. */
  readonly firstMs: number;
  /** Whether a new log begins with recorded days before that. */
  readonly recordsDays: boolean;
  /** What the device is told beside clock, broker and state. */
  readonly deviceArguments: readonly string[];
}

export type PlayRead =
  | { readonly ok: true; readonly play: Play }
  | { readonly ok: false; readonly reason: string };

export function readPlay(options: StartOptions): PlayRead {
  return options.scenario === undefined ? demoOf(options) : scenarioOf(options, options.scenario);
}

function demoOf({ data, from }: StartOptions): PlayRead {
  const read = readSiteFile(demoSiteFile);
  if (!read.ok) return { ok: false, reason: read.faults.map(formatSiteFault).join('; ') };
  const play: Play = {
    siteFile: demoSiteFile,
    site: read.site,
    dataFolder: data,
    firstMs: from ?? firstInstantMs,
    recordsDays: true,
    deviceArguments: ['--site', demoSiteFile],
  };
  return { ok: true, play };
}

function scenarioOf({ data, from }: StartOptions, path: string): PlayRead {
  const content = readScenarioFile(path);
  const scenario = readScenario(path);
  if (!content.ok) return { ok: false, reason: content.faults.join('; ') };
  if (!scenario.ok) return { ok: false, reason: scenario.faults.join('; ') };
  const { site, startMs } = scenario.value;
  if (site.broker === undefined || site.publish === undefined)
    return {
      ok: false,
      reason: `${site.name} runs no broker that a monitor could listen to: add broker and publish to its file`,
    };
  const play: Play = {
    siteFile: resolve(dirname(path), content.value.site),
    site,
    dataFolder: join(data, 'scenarios', basename(path, extname(path))),
    firstMs: from ?? startMs ?? firstInstantMs,
    recordsDays: false,
    deviceArguments: ['--scenario', path],
  };
  return { ok: true, play };
}
