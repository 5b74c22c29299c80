import { initialState, outcomeOf } from '../../controller/engine/index.ts';
import { readSiteFile } from '../../controller/site-file.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { PanCheck } from '../../shared-types/pan-check.ts';
import { defaultSettings, settingsSchema } from '../../shared-types/settings.ts';
import { createLoop } from '../../sim/loop.ts';
import { checkPan } from '../../sim/pan-check/check-pan.ts';
import type { Fault } from '../../sim/plant/faults.ts';
import { createPlant } from '../../sim/plant/state.ts';
import { createWeather } from '../../sim/weather/weather.ts';
import { memoryLog } from './memory-log.ts';

/** What is wrong with a pan at an hour of the sun; the hours before it are good ones. */
export type Ailment = (solarHour: number) => readonly Fault[];

export const ailments = {
  none: () => [],
  'a tenth of the light': () => [{ name: 'sheet-dirty', size: 0.1, forS: 0 }],
  'air below two fifths': () => [{ name: 'air-pocket', size: 0.4, forS: 0 }],
  'a quarter of the light from 14 h on': (hour) =>
    hour >= 14 ? [{ name: 'sheet-dirty', size: 0.25, forS: 0 }] : [],
} as const satisfies Record<string, Ailment>;

interface PanCase {
  readonly site: string;
  readonly seed: number;
  readonly days: number;
  /** Days at the end on which the pan ails. */
  readonly ailingDays: number;
  readonly ailment: Ailment;
}

const dayMs = 86_400_000;
const stepMs = 10_000;

/**
 * Runs loop and engine through some days of June and looks at the pan by their log.
 *
 * @returns undefined where the loop started and stopped too often for any steady flow.
 */
export function checkedPan({ site: name, seed, days, ailingDays, ailment }: PanCase): PanCheck | undefined {
  const read = readSiteFile(`sim/scenarios/${name}.yaml`);
  if (!read.ok) throw new Error(`${name} is no site`);
  const { site } = read;
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const fromMs = Date.UTC(2031, 5, 1);
  const ailsFromMs = fromMs + (days - ailingDays) * dayMs;
  const solarHour = (atMs: number) => (((atMs / 3_600_000 + site.location.longitudeDeg / 15) % 24) + 24) % 24;
  const loop = createLoop({
    ...{ site, settings, seed },
    plant: createPlant(site, { waterC: 22, panC: 15 }),
    weather: createWeather({ location: site.location, seed }),
    state: initialState(),
    faultsAt: (atMs) => (atMs >= ailsFromMs ? ailment(solarHour(atMs)) : []),
  });
  const records: LogRecord[] = [];
  for (let atMs = fromMs; atMs < fromMs + days * dayMs; atMs += stepMs) {
    const { input, decision } = loop.step(atMs);
    const step = records.length + 1;
    records.push({ step, run: 1, siteRevision: 1, settingsRevision: 1, input, outcome: outcomeOf(decision) });
  }
  const reader = memoryLog(records, [], site, settings);
  const checked = checkPan(reader, {
    days: reader.days().map(({ day }) => day),
    referenceDays: [],
    fit: null,
  });
  return checked?.ok === true ? checked.check : undefined;
}
