import { panHeatJK } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { trendKS } from '../want/trend.ts';
import { carriedWKPerLMin, healthyFlowLMin, sourceC } from './flow-bound.ts';

export interface ContactSample {
  /** Sheet above the water beneath it [K]. */
  readonly excessK: number;
  readonly heatWM2: number;
}

/** What sheet and water say of their contact now; null where they say nothing. */
export function contactSample(situation: Situation): ContactSample | null {
  const { readings, state } = situation;
  if (state.water.level !== 'full') return null;
  const sheetC = good(readings.panSheetC);
  const outletC = good(readings.panOutletC);
  if (sheetC === null || outletC === null) return null;
  switch (state.phase.name) {
    case 'resting':
      return atRest(sheetC, outletC, situation);
    case 'circulating':
      return inFlow(sheetC, outletC, situation);
    default:
      return null;
  }
}

/** The water of a resting pan takes up what passes from the sheet. */
function atRest(sheetC: number, outletC: number, situation: Situation): ContactSample | null {
  const trend = trendKS(situation);
  if (trend === null) return null;
  const { site } = situation;
  return {
    excessK: sheetC - outletC,
    heatWM2: (panHeatJK(site, outletC) * trend) / site.pan.wettedAreaM2,
  };
}

/** Moving water carries it away; in the middle of the pan it has got half of it. */
function inFlow(sheetC: number, outletC: number, situation: Situation): ContactSample | null {
  const fromC = sourceC(situation);
  if (fromC === null) return null;
  const flowLMin = good(situation.readings.flowLMin) ?? healthyFlowLMin(situation);
  const heatW = carriedWKPerLMin * flowLMin * (outletC - fromC);
  return {
    excessK: sheetC - (outletC + fromC) / 2,
    heatWM2: heatW / situation.site.pan.wettedAreaM2,
  };
}
