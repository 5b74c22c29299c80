import {
  type EngineState,
  engineVersion,
  initialState,
  outcomeOf,
  stepOn,
} from '../../controller/engine/index.ts';
import type { LogReader, SavedState } from '../../controller/log/log.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { clonePlant } from '../../sim/course/best/clone-plant.ts';
import { outsideJ } from '../../sim/course/harvest.ts';
import { createLoop, inputOf } from '../../sim/loop.ts';
import { emptyAccount } from '../../sim/plant/account.ts';
import { advance } from '../../sim/plant/advance.ts';
import { readSensors } from '../../sim/plant/sensors.ts';
import type { PlantState } from '../../sim/plant/state.ts';
import type { Weather } from '../../sim/weather/weather.ts';
import { memoryLog } from './memory-log.ts';

/** A simulated loop over some days whose calendar is UTC, with its log in memory. */
export interface LoggedLoop {
  readonly reader: LogReader;
  readonly days: readonly string[];
  /** Heat that truly came home on the last day if it is run under other settings [J]. */
  trueHomeJ(settings: Settings): number;
}

interface LoopTask {
  readonly site: Site;
  readonly settings: Settings;
  readonly plant: PlantState;
  readonly weather: Weather;
  readonly seed: number;
  /** First midnight in UTC. */
  readonly fromMs: number;
  readonly days: number;
}

const dayMs = 86_400_000;

/** Runs loop and engine through the days and keeps every record. */
export function loggedLoop(task: LoopTask): LoggedLoop {
  const { site, settings, plant, weather, seed, fromMs, days } = task;
  const stepMs = site.control.stepS * 1000;
  const loop = createLoop({ site, settings, plant, weather, seed, state: initialState() });
  const records: LogRecord[] = [];
  const saved: SavedState[] = [];
  let state = initialState();
  let lastDay: { plant: PlantState; state: EngineState } | undefined;
  const lastFromMs = fromMs + (days - 1) * dayMs;
  for (let atMs = fromMs; atMs <= fromMs + days * dayMs; atMs += stepMs) {
    if (atMs === lastFromMs) saved.push({ atMs, run: 1, step: records.length, engineVersion, state });
    const next = loop.step(atMs);
    const { input, decision } = next;
    records.push({
      step: records.length + 1,
      run: 1,
      siteRevision: 1,
      settingsRevision: 1,
      input,
      outcome: outcomeOf(decision),
    });
    ({ state } = next);
    if (atMs === lastFromMs) lastDay = { plant: clonePlant(plant), state };
  }
  const names = [...new Set(records.map(({ input }) => input.localDay))].slice(0, days);
  return {
    reader: memoryLog(records, saved, site, settings),
    days: names,
    trueHomeJ(tried) {
      if (lastDay === undefined) throw new Error('the last day never began');
      const ownPlant = clonePlant(lastDay.plant);
      return trueHomeJ({ ...task, plant: ownPlant, settings: tried, fromMs: lastFromMs }, lastDay.state);
    },
  };
}

/** The loop goes on from where it stood, in the true weather. */
function trueHomeJ({ site, settings, plant, weather, seed, fromMs }: LoopTask, first: EngineState): number {
  const account = emptyAccount();
  const heldJ = outsideJ(plant);
  const stepMs = site.control.stepS * 1000;
  const localDay = new Date(fromMs).toISOString().slice(0, 10);
  let state = first;
  for (let atMs = fromMs + stepMs; atMs <= fromMs + dayMs; atMs += stepMs) {
    advance(plant, state.outputs, weather.at(atMs), site.control.stepS, undefined, account);
    const input = inputOf(plant, readSensors(plant, seed), atMs, stepMs, localDay);
    ({ state } = stepOn(state, input, site, settings));
  }
  return account.homeJ + outsideJ(plant) - heldJ;
}
