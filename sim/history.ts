import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import {
  type EngineState,
  engineVersion,
  initialState,
  outcomeOf,
  reviveState,
  safeOutputs,
  step as stepEngine,
} from '../controller/engine/index.ts';
import { eventsBetween } from '../controller/log/events.ts';
import { localDaysOf } from '../controller/log/local-day.ts';
import { type LogWriter, logPath } from '../controller/log/log.ts';
import { openLogWriter } from '../controller/log/writer.ts';
import type { Channel } from '../shared-types/channels.ts';
import type { Decision, EngineInput } from '../shared-types/engine.ts';
import type { RawReadings } from '../shared-types/readings.ts';
import { defaultSettings, settingsSchema } from '../shared-types/settings.ts';
import type { Site } from '../shared-types/site.ts';
import type { KeptPlant } from './device/plant-state-file.ts';
import { advance } from './plant/advance.ts';
import { readSensors, type SensorValues } from './plant/sensors.ts';
import { createPlant, type PlantState } from './plant/state.ts';
import { rulesOf } from './replay/rules.ts';
import { carryThrough } from './replay/taking-up.ts';
import type { DayKind } from './weather/day-kinds.ts';
import { createWeather, type Weather } from './weather/weather.ts';

export interface HistoryOptions {
  readonly site: Site;
  readonly dataFolder: string;
  /** The span that is recorded, both ends included [UTC ms]. */
  readonly fromMs: number;
  readonly toMs: number;
  /** Picks weather and noise; a device with the same seed goes on under the same sky. */
  readonly seed: number;
  readonly kinds?: readonly DayKind[];
  readonly onProgress?: (doneFraction: number) => void;
}

const stepsPerBatch = 120;
const stateEveryMs = 600_000;

/**
 * Runs loop and engine in one process over past days and logs them as the controller would.
 *
 * @returns The loop as it stands at the end, to be put into a device's plant-state file.
 * @throws Error when the log cannot be written.
 */
export function recordHistory(options: HistoryOptions): { readonly plantState: KeptPlant } {
  const { site, fromMs, toMs, onProgress } = options;
  const path = logPath(options.dataFolder, site.name);
  mkdirSync(dirname(path), { recursive: true });
  const log = openLogWriter(path);
  try {
    const run = createRun(options, log);
    const stepMs = site.control.stepS * 1000;
    for (let atMs = fromMs; atMs <= toMs; ) {
      log.batch(() => {
        for (let i = 0; i < stepsPerBatch && atMs <= toMs; i++, atMs += stepMs) run.step(atMs);
      });
      if (!log.writable) throw new Error(`the log cannot be written: ${log.remark}`);
      onProgress?.(Math.min(1, (atMs - fromMs) / (toMs - fromMs)));
    }
    run.end();
    return { plantState: { schema: 1, site: site.name, atMs: run.atMs(), plant: run.plant } };
  } finally {
    log.close();
  }
}

/** A run of the controller beside the loop. */
function createRun({ site, fromMs, seed, kinds }: HistoryOptions, log: LogWriter) {
  const weather = createWeather({ location: site.location, seed, ...(kinds === undefined ? {} : { kinds }) });
  const plant = createPlant(site, { waterC: 22, panC: weather.at(fromMs).airC });
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const resumed = resumedState(log);
  const run = log.startRun(engineVersion, fromMs);
  const siteRevision = log.keepSite(site, fromMs);
  const settingsRevision = log.keepSettings(settings, fromMs);
  const dayAt = dayFinder(site.timeZone);
  let state = resumed;
  let decision: Decision | undefined;
  let day: string | undefined;
  let number = 0;
  let atMs = fromMs;
  let savedMs = fromMs;
  const save = () => {
    log.saveState({ atMs, run, step: number, engineVersion, state });
    savedMs = atMs;
  };
  save();
  log.event({ atMs: fromMs, kind: 'controller-started', text: 'Simulated days begin.', values: { run } });

  return {
    plant,
    atMs: () => atMs,
    step(nowMs: number): void {
      const elapsedMs = decision === undefined ? null : nowMs - atMs;
      const values = live(plant, weather, decision, nowMs, (elapsedMs ?? 0) / 1000, seed);
      const localDay = dayAt(nowMs);
      // The state before a day's first step lets a replay of that day begin at once.
      if (day !== undefined && localDay !== day) save();
      day = localDay;
      const input = inputOf(plant, values, nowMs, elapsedMs, localDay);
      const next = stepEngine(state, input, site, settings);
      const outcome = outcomeOf(next.decision);
      number++;
      log.append({ step: number, run, siteRevision, settingsRevision, input, outcome });
      for (const event of eventsBetween(decision ?? null, next.decision, fromMs)) log.event(event);
      ({ state, decision } = next);
      atMs = nowMs;
      if (nowMs - savedMs >= stateEveryMs) save();
    },
    end(): void {
      save();
      log.event({ atMs, kind: 'controller-stopped', text: 'Simulated days end.', values: { run } });
    },
  };
}

/** Where the log left off, as a controller takes it up; the beginning in a new log. */
function resumedState(log: LogWriter): EngineState {
  const { saved, after } = log.resume();
  const state = saved === null ? undefined : reviveState(saved.state);
  return state === undefined ? initialState() : carryThrough(state, after, rulesOf(log));
}

/** Lets the loop live from one step to the next under the outputs decided last. */
function live(
  plant: PlantState,
  weather: Weather,
  decision: Decision | undefined,
  nowMs: number,
  elapsedS: number,
  seed: number,
): SensorValues {
  const outputs = decision?.outputs ?? safeOutputs;
  // A first look wires the sensors; a millisecond changes nothing else.
  const wholeS = Math.max(0.001, elapsedS);
  const parts = Math.ceil(wholeS / 5);
  for (let part = 1; part <= parts; part++) {
    const untilMs = nowMs - (wholeS * 1000 * (parts - part)) / parts;
    advance(plant, outputs, weather.at(untilMs), wholeS / parts);
  }
  return readSensors(plant, seed);
}

function inputOf(
  plant: PlantState,
  values: SensorValues,
  nowMs: number,
  elapsedMs: number | null,
  localDay: string,
): EngineInput {
  const readings: RawReadings = {};
  for (const [channel, value] of Object.entries(values) as [Channel, number | string][])
    if (typeof value === 'number') readings[channel] = { value, ageMs: 0 };
  const { pumpFraction, drainOpen } = plant.moving;
  return {
    nowMs,
    elapsedMs,
    localDay,
    readings,
    feedback: { pumpFraction, drainOpen, ageMs: 0 },
    request: null,
  };
}

/** The local day of instants that only rise; asks the calendar once a day. */
function dayFinder(timeZone: string): (atMs: number) => string {
  const days = localDaysOf(timeZone);
  let day = '';
  let untilMs = Number.NEGATIVE_INFINITY;
  return (atMs) => {
    if (atMs >= untilMs) {
      day = days.dayOf(atMs);
      untilMs = days.boundsOf(day).toMs;
    }
    return day;
  };
}
