import { initialState } from '../../controller/engine/index.ts';
import type { Alarm, AlarmCode } from '../../shared-types/alarms.ts';
import { defaultSettings, settingsSchema } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { createLoop } from '../../sim/loop.ts';
import { createPlant } from '../../sim/plant/state.ts';
import { plainScenario } from '../../sim/scenario/scenario.ts';

export interface AlarmCount {
  /** How often each alarm was announced. */
  readonly announced: Readonly<Partial<Record<AlarmCode, number>>>;
  readonly total: number;
  /** Most that were announced in any one day since the beginning, and in any minute. */
  readonly mostADay: number;
  readonly mostAMinute: number;
  /** The longest that any one was active [h], and which. */
  readonly longestH: number;
  readonly longest: AlarmCode | null;
}

const stepMs = 10_000;
const dayMs = 86_400_000;

/** Counts the alarms of a healthy loop over a span of invented weather, its sensors with their errors for life. */
export function countAlarms(site: Site, fromMs: number, days: number, seed = 1): AlarmCount {
  const { weather, plantOptions } = plainScenario(site, seed);
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const plant = createPlant(site, plantOptions(fromMs));
  const loop = createLoop({ site, settings, plant, weather, seed, state: initialState() });
  const raisedMs: number[] = [];
  const announced: Partial<Record<AlarmCode, number>> = {};
  let told: readonly string[] = [];
  let longestH = 0;
  let longest: AlarmCode | null = null;
  for (let ms = 0; ms <= days * dayMs; ms += stepMs) {
    const { alarms, nowMs } = loop.step(fromMs + ms).decision;
    if (alarms.length === 0 && told.length === 0) continue;
    const now = alarms.filter(({ state }) => state === 'unacknowledged');
    for (const { code } of now.filter((alarm) => !told.includes(nameOf(alarm)))) {
      announced[code] = (announced[code] ?? 0) + 1;
      raisedMs.push(nowMs);
    }
    told = now.map(nameOf);
    for (const { code, active, sinceMs } of alarms)
      if (active && nowMs - sinceMs > longestH * 3_600_000)
        [longestH, longest] = [(nowMs - sinceMs) / 3_600_000, code];
  }
  const mostIn = (spanMs: number) =>
    Math.max(
      0,
      ...raisedMs.map((atMs) => raisedMs.filter((other) => other >= atMs && other < atMs + spanMs).length),
    );
  return {
    announced,
    total: raisedMs.length,
    mostADay: mostIn(dayMs),
    mostAMinute: mostIn(60_000),
    longestH,
    longest,
  };
}

const nameOf = ({ code, sinceMs }: Alarm) => `${code} ${sinceMs}`;
