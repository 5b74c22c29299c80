import { initialState, safeOutputs } from '../../../controller/engine/index.ts';
import { localDaysOf } from '../../../controller/log/local-day.ts';
import type { EngineInput, Operation, Outputs } from '../../../shared-types/engine.ts';
import type { RawReadings } from '../../../shared-types/readings.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { advance } from '../../../sim/plant/advance.ts';
import type { Fault } from '../../../sim/plant/faults.ts';
import { readSensors, type SensorValues } from '../../../sim/plant/sensors.ts';
import { createPlant, type PlantState } from '../../../sim/plant/state.ts';
import type { DayKind } from '../../../sim/weather/day-kinds.ts';
import { createWeather } from '../../../sim/weather/weather.ts';
import type { Seen, Step } from '../invariants/invariant.ts';

/** A fault and when it is there, in hours from the start. */
export type TimedFault = Omit<Fault, 'forS'> & { readonly fromH: number; readonly lastsH: number };

/** What happens to the controller, in hours from the start. */
export interface Happening {
  readonly atH: number;
  readonly what:
    | { readonly kind: 'restart' }
    /** The controller is gone; the device lets its outputs fall when they expire. */
    | { readonly kind: 'gone'; readonly minutes: number }
    | { readonly kind: 'clock'; readonly jumpH: number }
    | { readonly kind: 'request'; readonly operation: Operation };
}

/** A stretch of a loop's life, from which it follows to the last bit. */
export interface Life {
  readonly site: Site;
  readonly settings: Settings;
  readonly seed: number;
  readonly startMs: number;
  readonly hours: number;
  readonly kinds: readonly DayKind[];
  readonly storeC: number;
  readonly faults: readonly TimedFault[];
  readonly happenings: readonly Happening[];
}

/** One step of it, as an onlooker sees it who knows the truth. */
export interface Moment extends Seen {
  readonly atS: number;
  readonly plant: PlantState;
  readonly faults: readonly Fault[];
  /** What the device did in the time up to this step. */
  readonly outputs: Outputs;
}

const stepS = 10;
const hourS = 3600;

/** Lets a loop live, step by step, under any engine. */
export function* live(life: Life, step: Step): Generator<Moment> {
  const { site, settings, seed, startMs } = life;
  const weather = createWeather({ location: site.location, seed, kinds: life.kinds });
  const plant = createPlant(site, { waterC: life.storeC, panC: weather.at(startMs).airC });
  const days = localDaysOf(site.timeZone);
  let before = initialState();
  let outputs: Outputs = safeOutputs;
  let toldS = 0;
  let elapsedMs: number | null = null;
  for (let atS = stepS; atS <= life.hours * hourS; atS += stepS) {
    const atMs = startMs + atS * 1000;
    const faults = faultsAt(life.faults, atS);
    if (atS - toldS > site.control.outputExpiryS) outputs = safeOutputs;
    advance(plant, outputs, weather.at(atMs), stepS, faults);
    const values = readSensors(plant, seed, faults, false);
    const { restarts, gone, jumpMs, operation } = happeningAt(life.happenings, atS);
    if (gone) {
      elapsedMs = null;
      continue;
    }
    const nowMs = atMs + jumpMs;
    const input: EngineInput = {
      nowMs,
      elapsedMs: restarts ? null : elapsedMs,
      localDay: days.dayOf(nowMs),
      readings: readingsOf(values),
      feedback: feedbackOf(plant, faults),
      request: operation === null ? null : { id: `request-${atS}`, ageMs: 0, lifeMs: 10_000, operation },
    };
    const saved = restarts ? (JSON.parse(JSON.stringify(before)) as typeof before) : before;
    const { state, decision } = step(saved, input, site, settings);
    yield { atS, plant, faults, outputs, before: saved, input, state, decision };
    before = state;
    ({ outputs } = decision);
    toldS = atS;
    elapsedMs = stepS * 1000;
  }
}

function faultsAt(faults: readonly TimedFault[], atS: number): Fault[] {
  return faults
    .map(({ fromH, lastsH, ...fault }) => ({ ...fault, forS: atS - fromH * hourS, lastsS: lastsH * hourS }))
    .filter(({ forS, lastsS }) => forS >= 0 && forS < lastsS);
}

function happeningAt(happenings: readonly Happening[], atS: number) {
  const at = { restarts: false, gone: false, jumpMs: 0, operation: null as Operation | null };
  for (const { atH, what } of happenings) {
    const sinceS = atS - atH * hourS;
    const now = sinceS >= 0 && sinceS < stepS;
    if (what.kind === 'restart' && now) at.restarts = true;
    if (what.kind === 'request' && now) at.operation = what.operation;
    if (what.kind === 'gone' && sinceS >= 0 && sinceS < what.minutes * 60) at.gone = true;
    if (what.kind === 'clock' && sinceS >= 0) at.jumpMs += what.jumpH * hourS * 1000;
  }
  return at;
}

function isSilent(faults: readonly Fault[]): boolean {
  return faults.some(({ name }) => name === 'device-silent' || name === 'power-cut');
}

function feedbackOf({ moving }: PlantState, faults: readonly Fault[]): EngineInput['feedback'] {
  if (isSilent(faults)) return null;
  return { pumpFraction: moving.pumpFraction, drainOpen: moving.drainOpen, ageMs: 0 };
}

function readingsOf(values: SensorValues): RawReadings {
  const readings: RawReadings = {};
  for (const [name, value] of Object.entries(values)) {
    const channel = name as keyof RawReadings;
    readings[channel] =
      typeof value === 'number' ? { value, ageMs: 0 } : { value: null, ageMs: 0, fault: value };
  }
  return readings;
}
