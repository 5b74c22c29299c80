import { type EngineState, stepOn } from '../../../controller/engine/index.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Decision, EngineInput, Outputs } from '../../../shared-types/engine.ts';
import type { DayCurves } from '../../../shared-types/log.ts';
import type { RawReadings } from '../../../shared-types/readings.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import { outsideJ } from '../../course/harvest.ts';
import { noError } from '../../identify/possible-loop.ts';
import { minuteMs } from '../../identify/world/minutes.ts';
import { noLightZenithDeg } from '../../identify/world/sky-columns.ts';
import type { LoggedSpan } from '../../identify/world/span.ts';
import { nudge } from '../../identify/world/store-sensors.ts';
import type { LoggedWorld } from '../../identify/world/world.ts';
import { emptyAccount } from '../../plant/account.ts';
import { advance } from '../../plant/advance.ts';
import { readSensors } from '../../plant/sensors.ts';
import type { PlantState } from '../../plant/state.ts';
import { createExtremes, lookAt } from '../../simulate/extremes.ts';
import { createPhaseTrack, type Lived } from './lived.ts';

export interface LiveOptions {
  readonly span: LoggedSpan;
  readonly world: LoggedWorld;
  /** The engine as it stood when the day began. */
  readonly state: EngineState;
  readonly settingsAt: (atMs: number) => Settings;
  /** Picks the noise of the sensors. */
  readonly seed: number;
}

/** Lets a simulated loop and the engine live a logged day once more, in the world of that day. */
export function liveDay({ span, world, state: first, settingsAt, seed }: LiveOptions): Lived {
  const { site, day } = span;
  const plant = world.begin();
  const sense = sensesOf(span, world, plant, seed);
  const account = emptyAccount();
  const extremes = createExtremes();
  const track = createPhaseTrack();
  const curves = createCurves(plant);
  const heldAtFirstJ = outsideJ(plant);
  const requests = [...span.requests];
  let state = first;
  let outputs: Outputs = first.outputs;
  let decision: Decision | undefined;
  let elapsedMs = span.first.input.elapsedMs === null ? null : 0;

  for (let atMs = world.fromMs; atMs < world.toMs; ) {
    const wantedMs = stepMsOf(state, world.weather.at(atMs + 1).sunZenithDeg);
    // No step reaches into the next minute.
    const dtMs = Math.min(wantedMs, minuteMs - ((atMs - world.fromMs) % minuteMs));
    atMs += dtMs;
    advance(plant, outputs, world.weather.at(atMs), dtMs / 1000, undefined, account);
    const byK = world.nudgeAt(atMs);
    if (byK !== undefined) nudge(plant, byK);
    const request = (requests[0]?.atMs ?? Number.POSITIVE_INFINITY) <= atMs ? requests.shift() : undefined;
    const input: EngineInput = {
      nowMs: atMs,
      elapsedMs: elapsedMs === null ? null : dtMs,
      localDay: day,
      readings: sense(atMs),
      feedback: { pumpFraction: plant.moving.pumpFraction, drainOpen: plant.moving.drainOpen, ageMs: 0 },
      request: request?.request ?? null,
    };
    elapsedMs = 0;
    const next = stepOn(state, input, site, settingsAt(atMs));
    ({ state, decision } = next);
    ({ outputs } = decision);
    track.note(atMs, decision);
    if ((atMs - world.fromMs) % minuteMs === 0) {
      lookAt(extremes, plant);
      curves.note(atMs, input.readings, decision);
    }
  }
  const total = decision?.meter.total ?? first.meter.total;
  const since = (name: 'pumpRunS' | 'starts' | 'fills') => total[name] - first.meter.total[name];
  return {
    heatHomeJ: account.homeJ + outsideJ(plant) - heldAtFirstJ,
    electricityJ: account.electricityJ,
    pumpRunS: since('pumpRunS'),
    starts: since('starts'),
    fills: since('fills'),
    extremes,
    curves: { day, ...curves.kept(), phases: track.spans(), events: [] },
  };
}

/**
 * Steps of loop and engine [ms]: short while water is on the move from one vessel to the other, longer while the loop is
 * in balance, longest where nothing happens at all. Design choices; tests/bench prints what they cost.
 */
const stepsMs = { moving: 10_000, balanced: 30_000, still: 60_000 } as const;

function stepMsOf({ phase: { name } }: EngineState, sunZenithDeg: number): number {
  if (name === 'filling' || name === 'emptying' || name === 'stopped') return stepsMs.moving;
  return name === 'empty' && sunZenithDeg > noLightZenithDeg ? stepsMs.still : stepsMs.balanced;
}

/** What the engine is given at an instant: what the log had, where the log had it. */
function sensesOf({ minutes }: LoggedSpan, world: LoggedWorld, plant: PlantState, seed: number) {
  const { fromMs, values, steps } = minutes;
  const own = plant.parts.channels.flatMap((channel) => {
    const column = values[channel];
    return column === undefined ? [] : [{ channel, column, ...(world.sensorErrors[channel] ?? noError) }];
  });
  return (atMs: number): RawReadings => {
    const minute = Math.ceil((atMs - fromMs) / minuteMs) - 1;
    const shown = readSensors(plant, seed, undefined, true);
    const readings: RawReadings = {};
    for (const { channel, column, share, offset } of own) {
      const value = shown[channel];
      const failed = Number.isNaN(column[minute]) && steps[minute] !== 0;
      readings[channel] =
        failed || typeof value !== 'number'
          ? { value: null, ageMs: 0, fault: 'unreadable' }
          : { value: (1 + share) * value + offset, ageMs: 0 };
    }
    return readings;
  };
}

function createCurves(plant: PlantState) {
  const { channels } = plant.parts;
  const atMs: number[] = [];
  const pumpFraction: number[] = [];
  const heatTodayJ: number[] = [];
  const series: Partial<Record<Channel, (number | null)[]>> = Object.fromEntries(
    channels.map((channel) => [channel, []]),
  );
  return {
    note(nowMs: number, readings: RawReadings, { outputs, meter }: Decision): void {
      atMs.push(nowMs);
      pumpFraction.push(outputs.pumpFraction);
      heatTodayJ.push(meter.today.heatHomeJ);
      for (const channel of channels) series[channel]?.push(readings[channel]?.value ?? null);
    },
    kept: (): Pick<DayCurves, 'atMs' | 'pumpFraction' | 'heatTodayJ' | 'series'> => ({
      atMs,
      pumpFraction,
      heatTodayJ,
      series,
    }),
  };
}
