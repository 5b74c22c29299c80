import { initialState } from '../../controller/engine/index.ts';
import type { Channel } from '../../shared-types/channels.ts';
import type { PhaseName } from '../../shared-types/engine.ts';
import { defaultSettings, settingsSchema } from '../../shared-types/settings.ts';
import { createFaultBoard, raiseWishes } from '../device/fault-board.ts';
import { instantOf } from '../device/local-moment.ts';
import { createLoop } from '../loop.ts';
import { createPlant } from '../plant/state.ts';
import { readScenario } from '../scenario/read.ts';

/** A minute of the day as the controller saw it. */
export interface Minute {
  readonly hour: number;
  readonly phase: PhaseName;
  readonly values: Readonly<Partial<Record<Channel, number>>>;
  readonly heatTodayKWh: number;
}

export interface ChartedDay {
  readonly title: string;
  readonly day: string;
  readonly minutes: readonly Minute[];
}

type Lived =
  | { readonly ok: true; readonly value: ChartedDay }
  | { readonly ok: false; readonly faults: readonly string[] };

const dayMs = 86_400_000;
const stepMs = 10_000;
const usualStart = { date: '2031-06-21', minuteOfDay: 0 };

/** Lets loop and controller live through the days before and one day, which is kept. */
export function liveDay(path: string, daysBefore: number): Lived {
  const read = readScenario(path);
  if (!read.ok) return read;
  const { title, site, seed, weather, wishes, startMs, exactSensors, plantOptions } = read.value;
  const date = startMs === undefined ? usualStart.date : new Date(startMs).toISOString().slice(0, 10);
  const midnightMs = instantOf({ date, minuteOfDay: 0 }, 0, site.timeZone);
  const fromMs = midnightMs - daysBefore * dayMs;
  const board = createFaultBoard(site);
  raiseWishes(board, wishes, midnightMs, site.timeZone);
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const plant = createPlant(site, plantOptions(fromMs));
  const loop = createLoop({
    ...{ site, settings, plant, weather, seed, exactSensors },
    state: initialState(),
    faultsAt: board.activeAt,
  });
  const minutes: Minute[] = [];
  for (let atMs = fromMs; atMs <= midnightMs + dayMs; atMs += stepMs) {
    const { decision } = loop.step(atMs);
    if (atMs < midnightMs || (atMs - midnightMs) % 60_000 !== 0) continue;
    const values: Partial<Record<Channel, number>> = {};
    for (const [channel, reading] of Object.entries(decision.belief.readings))
      if (reading.quality !== 'failed') values[channel as Channel] = reading.value;
    const { phase, meter } = decision;
    const heatTodayKWh = (meter.today.heatHomeJ - meter.today.heatLostJ) / 3.6e6;
    minutes.push({
      hour: (atMs - midnightMs) / 3_600_000,
      phase,
      values,
      heatTodayKWh,
    });
  }
  return { ok: true, value: { title: `${site.title}: ${title}`, day: date, minutes } };
}
