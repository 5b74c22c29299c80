import { pairOffset } from '../pair/uncertainty.ts';
import { panHeatJK } from '../pan.ts';
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
  const rateW = heatRateW ?? roughRateW(situation);
  if (state.water.level !== 'full' || facts.panC === null || rateW === null) return null;
  const trend = trendKS(situation);
  return trend === null ? null : panHeatJK(site, facts.panC) * trend + rateW + 0;
}

/** What the gain may be wrong by while the pump runs [W], since two sensors never agree. */
export function unsureW({ state, site }: Situation): number {
  const { pumpFraction } = state.outputs;
  return pumpFraction === 0
    ? 0
    : streamHeatW(pumpFraction * site.pump.ratedFlowLMin, 20 + pairOffset(state.learnt).sdK, 20, 20);
}

/** Heat brought home by the pump's rating and whatever tells of the pan: too rough to be metered [W]. */
function roughRateW({ state, facts, site }: Situation): number | null {
  const { panC, storeBottomC } = facts;
  if (panC === null || storeBottomC === null) return null;
  return streamHeatW(state.outputs.pumpFraction * site.pump.ratedFlowLMin, panC, storeBottomC, storeBottomC);
}
