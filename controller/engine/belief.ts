import type { Belief } from '../../shared-types/engine.ts';
import { panHeatJK } from './pan.ts';
import { isPumping, type Situation } from './situation.ts';
import { trendKS } from './want/trend.ts';
import { leastFlowLMin } from './watch/pump-signs.ts';

/** What the engine holds true, for people to read; `heatRateW` is what the meter reads now. */
export function beliefOf(situation: Situation, heatRateW: number | null): Belief {
  const { state, readings, facts, site } = situation;
  const { differenceK, panC } = facts;
  const full = state.water.level === 'full';
  const heatJK = panC === null ? null : panHeatJK(site, panC);
  return {
    readings,
    water: state.water.level,
    flowProven: isFlowProven(situation),
    differenceK,
    netGainW: full ? netGainW(situation, heatJK, heatRateW) : null,
    heatAtStakeJ: full && heatJK !== null && differenceK !== null ? heatJK * differenceK + 0 : null,
    timeToFreezingS: timeToFreezingS(situation),
  };
}

function isFlowProven(situation: Situation): boolean {
  const { flowLMin } = situation.facts;
  return isPumping(situation.state) && flowLMin !== null && flowLMin >= leastFlowLMin(situation);
}

/** What the pan's water takes up and what it brings home, together [W]; smoothed over ten minutes. */
function netGainW(situation: Situation, heatJK: number | null, heatRateW: number | null): number | null {
  const trend = trendKS(situation);
  return heatJK === null || heatRateW === null || trend === null ? null : heatJK * trend + heatRateW + 0;
}

/** Time to 0 °C if the coldest pan reading went on falling as the pan does now [s]. */
function timeToFreezingS(situation: Situation): number | null {
  const { coldestPanC } = situation.facts;
  const trend = trendKS(situation);
  if (coldestPanC === null || trend === null || trend >= 0) return null;
  return Math.max(0, coldestPanC / -trend);
}
