import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import {
  type EngineState,
  engineVersion,
  initialState,
  outcomeOf,
  reviveState,
} from '../controller/engine/index.ts';
import { eventsBetween } from '../controller/log/events.ts';
import { type LogWriter, logPath } from '../controller/log/log.ts';
import { openLogWriter } from '../controller/log/writer.ts';
import type { Decision } from '../shared-types/engine.ts';
import { defaultSettings, settingsSchema } from '../shared-types/settings.ts';
import type { Site } from '../shared-types/site.ts';
import type { KeptPlant } from './device/plant-state-file.ts';
import { createLoop } from './loop.ts';
import { createPlant } from './plant/state.ts';
import { rulesOf } from './replay/rules.ts';
import { carryThrough } from './replay/taking-up.ts';
import type { DayKind } from './weather/day-kinds.ts';
import { createWeather } from './weather/weather.ts';

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
    return { plantState: { schema: 2, site: site.name, atMs: run.atMs(), plant: run.plant } };
  } finally {
    log.close();
  }
}

/** A run of the controller beside the loop. */
function createRun({ site, fromMs, seed, kinds }: HistoryOptions, log: LogWriter) {
  const weather = createWeather({ location: site.location, seed, ...(kinds === undefined ? {} : { kinds }) });
  const plant = createPlant(site, { waterC: 22, panC: weather.at(fromMs).airC });
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  let state = resumedState(log);
  const loop = createLoop({ site, settings, plant, weather, seed, state });
  const run = log.startRun(engineVersion, fromMs);
  const siteRevision = log.keepSite(site, fromMs);
  const settingsRevision = log.keepSettings(settings, fromMs);
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
      const next = loop.step(nowMs);
      // The state before a day's first step lets a replay of that day begin at once.
      if (day !== undefined && next.input.localDay !== day) save();
      day = next.input.localDay;
      const outcome = outcomeOf(next.decision);
      number++;
      log.append({ step: number, run, siteRevision, settingsRevision, input: next.input, outcome });
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
