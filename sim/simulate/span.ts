import { initialState } from '../../controller/engine/index.ts';
import type { Decision } from '../../shared-types/engine.ts';
import { defaultSettings, settingsSchema } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { createLoop } from '../loop.ts';
import { openBooks, unexplainedJ, unexplainedKg } from '../plant/account.ts';
import type { DrawProfile } from '../plant/draws.ts';
import type { Fault } from '../plant/faults.ts';
import type { PlantState } from '../plant/state.ts';
import type { Weather } from '../weather/weather.ts';
import { lookAt } from './extremes.ts';
import { beginCount, endCount, type Harvest } from './harvest.ts';

export interface SpanOptions {
  readonly site: Site;
  readonly plant: PlantState;
  readonly weather: Weather;
  readonly seed: number;
  readonly exactSensors?: boolean;
  readonly faultsAt?: (atMs: number) => readonly Fault[];
  readonly fromMs: number;
  /** Length of the span, one and more. */
  readonly days: number;
  /** Step of plant and engine [s], 1 to 10. */
  readonly stepS: number;
  readonly onDay?: (doneDays: number) => void;
}

export interface SpanReport {
  readonly site: string;
  /** Who drew hot water. */
  readonly draw: DrawProfile;
  readonly months: readonly Harvest[];
  readonly all: Harvest;
  /** What the books of the whole span cannot explain, over the heat turned over and the water held. */
  readonly unexplainedHeatFraction: number;
  readonly unexplainedWaterFraction: number;
}

const dayMs = 86_400_000;
/** Sun and extremes change slowly; they are looked at this often. */
const lookEveryS = 300;

/** Runs loop and engine through a span without log, link or clock. The same options give the same report. */
export function simulateSpan(options: SpanOptions): SpanReport {
  const { site, plant, weather, fromMs, days, stepS, onDay } = options;
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const books = openBooks(plant);
  const { account } = books;
  const loop = createLoop({ ...options, settings, state: initialState(), account });
  const newAlarms = createAlarmCounter();
  const lookEvery = Math.max(1, Math.round(lookEveryS / stepS));
  const stepsADay = Math.round(dayMs / 1000 / stepS);
  const months: Harvest[] = [];
  let step = loop.step(fromMs);
  const all = beginCount('all', account, step);
  let month = beginCount(monthOf(step.input.localDay), account, step);
  for (let number = 1; number <= days * stepsADay; number++) {
    const atMs = fromMs + number * stepS * 1000;
    step = loop.step(atMs);
    const alarms = newAlarms(step.decision);
    all.alarms += alarms;
    month.alarms += alarms;
    if (number % lookEvery === 0) {
      const sunJM2 = weather.at(atMs).irradianceWM2 * lookEvery * stepS;
      for (const count of [all, month]) {
        count.sunJM2 += sunJM2;
        lookAt(count.extremes, plant);
      }
      if (monthOf(step.input.localDay) !== month.month) {
        months.push(endCount(month, account, step));
        month = beginCount(monthOf(step.input.localDay), account, step);
      }
    }
    if (number % stepsADay === 0) onDay?.(number / stepsADay);
  }
  if (step.input.nowMs > month.fromMs) months.push(endCount(month, account, step));
  return {
    site: site.name,
    draw: plant.parts.draw,
    months,
    all: endCount(all, account, step),
    unexplainedHeatFraction:
      Math.abs(unexplainedJ(books, plant)) / (Math.abs(account.gainJ) + Math.abs(books.heldJ)),
    unexplainedWaterFraction: Math.abs(unexplainedKg(books, plant)) / books.heldKg,
  };
}

const monthOf = (localDay: string) => localDay.slice(0, 7);

/** Counts the alarms that a decision announces and the one before did not: an alarm that comes again counts. */
function createAlarmCounter(): (decision: Decision) => number {
  let before: readonly string[] = [];
  return ({ alarms }) => {
    if (alarms.length === 0 && before.length === 0) return 0;
    const told = alarms.filter(({ state }) => state === 'unacknowledged');
    const names = told.map(({ code, sinceMs }) => `${code} ${sinceMs}`);
    const news = names.filter((name) => !before.includes(name)).length;
    before = names;
    return news;
  };
}
