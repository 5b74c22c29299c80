import { type Channel, channels } from '../../shared-types/channels.ts';
import type { UnderstoodRow } from '../../shared-types/foreign-log.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { RawReadings } from '../../shared-types/readings.ts';
import type { Site } from '../../shared-types/site.ts';
import { type Held, heldAt, nothingHeld } from './hold.ts';

/** A step of an imported day before its heat is counted. */
export interface BareStep {
  readonly input: LogRecord['input'];
  readonly outputs: LogRecord['outcome']['outputs'];
}

/** A day of samples as steps. */
export interface DaySteps {
  readonly steps: readonly BareStep[];
  /** The middle one of the distances of its samples [ms]. */
  readonly usualStepMs: number;
  /** Samples that became a step. */
  readonly samples: readonly UnderstoodRow[];
}

/** Steps of the day that lie further apart than this leave a hole [usual steps]. */
const holeSteps = 4;
/** Distance that is taken for usual where a day has one sample [ms]. */
const fallbackStepMs = 60_000;

/** Longest distance of two steps of which one speaks for the time between them [ms]. */
export const holeMs = ({ usualStepMs }: Pick<DaySteps, 'usualStepMs'>) => holeSteps * usualStepMs;

/**
 * Turns samples of a day into steps as a controller logs them. A sample at which nothing tells whether the pump
 * ran becomes none. A value holds until it is older than a hole.
 *
 * @param samples - In order, of different instants.
 */
export function stepsOf(day: string, samples: readonly UnderstoodRow[], site: Site): DaySteps {
  const usualStepMs = usualStep(samples);
  const steps: BareStep[] = [];
  const taken: UnderstoodRow[] = [];
  let held: Held = nothingHeld;
  for (const sample of samples) {
    held = heldAt(held, sample, holeMs({ usualStepMs }));
    const pumpFraction = held.outputs?.value.pumpFraction ?? derivedPump(held, site);
    if (pumpFraction === null) continue;
    const before = steps.at(-1)?.input.nowMs;
    const elapsedMs = before === undefined ? null : sample.atMs - before;
    steps.push(stepOf(sample.atMs, { day, elapsedMs, held, pumpFraction }));
    taken.push(sample);
  }
  return { steps, usualStepMs, samples: taken };
}

function usualStep(samples: readonly UnderstoodRow[]): number {
  const distances = samples.slice(1).map(({ atMs }, index) => atMs - (samples[index] as UnderstoodRow).atMs);
  distances.sort((a, b) => a - b);
  return distances[distances.length >> 1] ?? fallbackStepMs;
}

/** Shares of the pump's rated flow and power above which it is taken to run. Design choices. */
const runningFlowFraction = 0.05;
const runningPowerFraction = 0.2;

/** Whether the pump ran, by its flow or else its power; null where neither is known. */
function derivedPump({ values }: Held, { pump }: Site): 0 | 1 | null {
  const { flowLMin, pumpPowerW } = values;
  if (flowLMin !== undefined) return flowLMin.value > runningFlowFraction * pump.ratedFlowLMin ? 1 : 0;
  if (pumpPowerW !== undefined) return pumpPowerW.value > runningPowerFraction * pump.ratedPowerW ? 1 : 0;
  return null;
}

interface StepParts {
  readonly day: string;
  readonly elapsedMs: number | null;
  readonly held: Held;
  readonly pumpFraction: number;
}

function stepOf(nowMs: number, { day, elapsedMs, held, pumpFraction }: StepParts): BareStep {
  const { outputs } = held;
  const feedback = outputs === undefined ? null : { ...outputs.value, ageMs: nowMs - outputs.atMs };
  return {
    input: { nowMs, elapsedMs, localDay: day, readings: readingsOf(nowMs, held), feedback, request: null },
    outputs: {
      pumpFraction,
      // Where nobody logged the drain the feedback says null, and it stands here as closed.
      drainOpen: feedback?.drainOpen ?? false,
      drainPumpOn: false,
      exchangerPumpOn: false,
    },
  };
}

function readingsOf(nowMs: number, { values }: Held): RawReadings {
  const readings: RawReadings = {};
  for (const channel of channels) {
    const written = values[channel];
    if (written !== undefined) readings[channel] = { value: written.value, ageMs: nowMs - written.atMs };
  }
  return readings;
}

/** The samples that steps were made of: what a step was given at its own instant. */
export function samplesOf(records: readonly Pick<LogRecord, 'input'>[]): UnderstoodRow[] {
  return records.map(({ input: { nowMs, readings, feedback } }) => {
    const values: Partial<Record<Channel, number>> = {};
    for (const channel of channels) {
      const reading = readings[channel];
      if (reading?.ageMs === 0 && reading.value !== null) values[channel] = reading.value;
    }
    const told = feedback?.ageMs === 0 ? feedback : { pumpFraction: null, drainOpen: null };
    return { atMs: nowMs, values, pumpFraction: told.pumpFraction, drainOpen: told.drainOpen };
  });
}
