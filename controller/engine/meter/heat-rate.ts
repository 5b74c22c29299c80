import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { flowFraction } from '../speed/flow-of-speed.ts';
import { fullFlowLMin } from '../watch/pump-signs.ts';
import { streamHeatW } from '../water.ts';
import { endsOf } from './ends.ts';
import { readingErrorFraction } from './error.ts';

export interface HeatReading {
  /** Heat into the source [W]; 0 while nothing comes back; null when it cannot be told. */
  readonly rateW: number | null;
  readonly flowLMin: number;
  /** The flow is not measured but follows from the pump's speed, or the outlet follows from the sheet. */
  readonly estimated: boolean;
  /** What the rate may be off by, as a share of it; null while no heat flows. */
  readonly errorFraction: number | null;
}

/**
 * Heat that the loop brings home now, under the outputs that were in force since the last step.
 *
 * The boundary is where the pan's water leaves its source and comes back to it: store, or drain-back
 * reservoir. What a reservoir passes on later through its exchanger has been counted here and is not counted
 * again; what it loses to the room on the way is lost behind the meter.
 *
 * Flow meters are taken to sit in the cold pipe to the pan, as heat meters commonly do (an assumption of
 * ours); the density is that of the water there. Only good readings count.
 */
export function readHeat(situation: Situation): HeatReading {
  const { state } = situation;
  const { flowLMin, estimated } = flowOf(situation);
  if (state.phase.name !== 'circulating' || state.water.level !== 'full')
    return { rateW: 0, flowLMin, estimated, errorFraction: null };
  const ends = endsOf(situation, flowLMin);
  const guessed = estimated || ends.estimated;
  const { hotC, coldC } = ends;
  // Behind a heat dump nothing tells what comes home.
  if (hotC === null || coldC === null || state.outputs.heatDumpOn === true)
    return { rateW: null, flowLMin, estimated: guessed, errorFraction: null };
  const rateW = streamHeatW(Math.max(0, flowLMin), hotC, coldC, coldC) + 0;
  const errorFraction = readingErrorFraction(situation, { flowLMin, differenceK: hotC - coldC, estimated });
  return { rateW, flowLMin, estimated: guessed, errorFraction };
}

/** Flow through the pump [L/min]: as measured, else by its speed. */
export function flowOf({ readings, state, site }: Situation): {
  readonly flowLMin: number;
  readonly estimated: boolean;
} {
  const measured = good(readings.flowLMin);
  if (measured !== null) return { flowLMin: measured, estimated: false };
  const flowLMin = flowFraction(site, state.outputs.pumpFraction) * fullFlowLMin(site, state.learnt);
  return { flowLMin, estimated: true };
}
