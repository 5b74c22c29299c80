import type { Belief } from '../../shared-types/engine.ts';
import { pairOffset } from './pair/uncertainty.ts';
import { panHeatJK } from './pan.ts';
import { isPumping, type Situation } from './situation.ts';
import { trendKS } from './want/trend.ts';
import { leastFlowLMin } from './watch/pump-signs.ts';

/** What the engine holds true, for people to read. */
export function beliefOf(situation: Situation): Belief {
  const { state, readings, facts, site } = situation;
  const { differenceK, panC } = facts;
  const full = state.water.level === 'full';
  return {
    readings,
    water: state.water.level,
    flowProven: isFlowProven(situation),
    differenceK,
    pair: pairOffset(state.learnt),
    netGainW: full ? state.harvest.gainW : null,
    dayPromiseJ: state.harvest.dayJ,
    heatAtStakeJ:
      full && panC !== null && differenceK !== null ? panHeatJK(site, panC) * differenceK + 0 : null,
    timeToFreezingS: timeToFreezingS(situation),
  };
}

function isFlowProven(situation: Situation): boolean {
  const { flowLMin } = situation.facts;
  return isPumping(situation.state) && flowLMin !== null && flowLMin >= leastFlowLMin(situation);
}

/** Time to 0 °C if the coldest pan reading went on falling as the pan does now [s]. */
function timeToFreezingS(situation: Situation): number | null {
  const { coldestPanC } = situation.facts;
  const trend = trendKS(situation) ?? 0;
  if (coldestPanC === null || trend >= 0) return null;
  return Math.max(0, coldestPanC / -trend);
}
