import { endsOffsetSdK } from '../meter/ends-offset.ts';
import { pairOffset, uncomparedSdK } from '../pair/uncertainty.ts';
import { panHeatJK } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { streamHeatW } from '../water.ts';
import { trendKS } from './trend.ts';

/**
 * What a full pan gains from sun and air, less what it loses [W]: what its water takes up and what it brings
 * home, together. Smoothed like the trend. Null when it cannot be told, or the pan is not full.
 *
 * @param heatRateW - What the meter reads now; 0 while nothing circulates.
 */
export function netGainW(situation: Situation, heatRateW: number | null): number | null {
  const { state, facts, site } = situation;
  const { panC } = facts;
  const trend = trendKS(situation);
  if (state.water.level !== 'full' || panC === null || trend === null) return null;
  const rateW = heatRateW ?? roughRateW(situation, panC);
  return rateW === null ? null : panHeatJK(site, panC) * trend + rateW;
}

/** What the gain may be wrong by while the pump runs [W], since two sensors never agree. */
export function unsureW({ state, site, readings }: Situation): number {
  const { pumpFraction } = state.outputs;
  if (pumpFraction === 0) return 0;
  const { learnt } = state;
  const byEnds = good(readings.panOutletC) !== null && good(readings.panInletC) !== null;
  const endsSdK = learnt['endsOffsetK'] === undefined ? uncomparedSdK : endsOffsetSdK;
  const sdK = byEnds ? endsSdK : pairOffset(learnt).sdK;
  return streamHeatW(pumpFraction * site.pump.ratedFlowLMin, 20 + sdK, 20, 20);
}

/** Heat brought home by the pump's rating and whatever tells of the pan: too rough to be metered [W]. */
function roughRateW({ state, facts, site }: Situation, panC: number): number | null {
  const { storeBottomC } = facts;
  if (storeBottomC === null) return null;
  return streamHeatW(state.outputs.pumpFraction * site.pump.ratedFlowLMin, panC, storeBottomC, storeBottomC);
}
