import { type EngineState, safeOutputs, stepOn } from '../controller/engine/index.ts';
import { localDaysOf } from '../controller/log/local-day.ts';
import type { Decision, EngineInput, OperatorRequest } from '../shared-types/engine.ts';
import type { RawReadings } from '../shared-types/readings.ts';
import type { Settings } from '../shared-types/settings.ts';
import type { Site } from '../shared-types/site.ts';
import type { Account } from './plant/account.ts';
import { advance } from './plant/advance.ts';
import type { Fault } from './plant/faults.ts';
import { readSensors, type SensorValues } from './plant/sensors.ts';
import type { PlantState } from './plant/state.ts';
import type { Weather } from './weather/weather.ts';

export interface LoopOptions {
  readonly site: Site;
  readonly settings: Settings;
  readonly plant: PlantState;
  readonly weather: Weather;
  readonly seed: number;
  /** Where the engine begins. */
  readonly state: EngineState;
  /** Sensors without their error for life. */
  readonly exactSensors?: boolean;
  readonly faultsAt?: (atMs: number) => readonly Fault[];
  /** Sum of what comes and goes; kept by whoever wants to know. */
  readonly account?: Account;
}

export interface LoopStep {
  readonly input: EngineInput;
  readonly decision: Decision;
  readonly state: EngineState;
}

/** Simulated loop and engine in one process, without clock, link or log. */
export interface Loop {
  /**
   * Lets the loop live until an instant under the outputs decided last, then lets the engine decide, on what a
   * person asks as well.
   */
  step(nowMs: number, request?: OperatorRequest | null): LoopStep;
}

/** Longest step of the plant; longer ones of the engine are divided. */
const longestStepS = 10;
const none: readonly Fault[] = [];
const noFaults = () => none;

export function createLoop(options: LoopOptions): Loop {
  const { site, settings, plant, weather, seed, account, exactSensors = false } = options;
  const { faultsAt = noFaults } = options;
  const dayAt = dayFinder(site.timeZone);
  let { state } = options;
  let decision: Decision | undefined;
  let atMs = Number.NaN;

  function live(untilMs: number): SensorValues {
    const outputs = decision?.outputs ?? safeOutputs;
    // A first look wires the sensors; a millisecond changes nothing else.
    const wholeS = decision === undefined ? 0.001 : (untilMs - atMs) / 1000;
    const parts = Math.ceil(wholeS / longestStepS);
    for (let part = 1; part <= parts; part++) {
      const partMs = untilMs - (wholeS * 1000 * (parts - part)) / parts;
      advance(plant, outputs, weather.at(partMs), wholeS / parts, faultsAt(partMs), account);
    }
    return readSensors(plant, seed, faultsAt(untilMs), exactSensors);
  }

  return {
    step(nowMs, request = null) {
      const elapsedMs = decision === undefined ? null : nowMs - atMs;
      const values = live(nowMs);
      const input = { ...inputOf(plant, values, nowMs, elapsedMs, dayAt(nowMs)), request };
      const next = stepOn(state, input, site, settings);
      ({ state, decision } = next);
      atMs = nowMs;
      return { input, decision, state };
    },
  };
}

/** What a controller is given of the loop at an instant. */
export function inputOf(
  plant: PlantState,
  values: SensorValues,
  nowMs: number,
  elapsedMs: number | null,
  localDay: string,
): EngineInput {
  const readings: RawReadings = {};
  for (const channel of plant.parts.channels) {
    const value = values[channel];
    if (typeof value === 'number') readings[channel] = { value, ageMs: 0 };
    else if (value !== undefined) readings[channel] = { value: null, ageMs: 0, fault: value };
  }
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
