import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { streamHeatW } from '../water.ts';

export interface HeatReading {
  /** Heat into the store [W]; 0 while nothing circulates; null when it cannot be told. */
  readonly rateW: number | null;
  readonly flowLMin: number | null;
  /** The flow is not measured but taken from the pump's rating. */
  readonly estimated: boolean;
}

/**
 * Heat that the loop brings home now, under the outputs that were in force since the last step.
 *
 * Flow meters are taken to sit in the cold pipe to the pan, as heat meters commonly do (an assumption
 * of ours); the density is that of the water there. Only good readings count.
 */
export function readHeat(situation: Situation): HeatReading {
  const { readings, state, site } = situation;
  const { flowLMin, estimated } = flowOf(situation);
  if (state.phase.name !== 'circulating' || state.water.level !== 'full')
    return { rateW: 0, flowLMin, estimated };
  const hotC = good(readings.panOutletC);
  // Behind an exchanger the store bottom is another water's temperature.
  const source = site.plumbing === 'reservoir' ? readings.reservoirC : readings.storeBottomC;
  const coldC = good(readings.panInletC) ?? good(source);
  if (hotC === null || coldC === null || flowLMin === null) return { rateW: null, flowLMin, estimated };
  const rateW = streamHeatW(Math.max(0, flowLMin), hotC, coldC, coldC) + 0;
  return { rateW, flowLMin, estimated };
}

function flowOf({ readings, state, site }: Situation): Omit<HeatReading, 'rateW'> {
  if (site.sensors.flowLMin !== undefined) {
    const flowLMin = good(readings.flowLMin);
    if (flowLMin !== null) return { flowLMin, estimated: false };
  }
  return { flowLMin: state.outputs.pumpFraction * site.pump.ratedFlowLMin, estimated: true };
}
