import { panHeatJK, panVolumeL } from '../pan.ts';
import { good } from '../sense/facts.ts';
import { isPumping, type Situation } from '../situation.ts';
import { streamHeatW } from '../water.ts';
import { endsOf } from './ends.ts';
import { flowOf } from './heat-rate.ts';

/**
 * Heat that the pan's water brought back above what it was when it was drawn from its source [J]. It counts
 * once, when the pan is proven empty, with the volume of the site file.
 */
export function emptiedHeatJ({ state: { water }, site }: Situation): number {
  const { emptyingPanC, fillStoreC } = water;
  if (emptyingPanC === null || fillStoreC === null) return 0;
  return panHeatJK(site, (emptyingPanC + fillStoreC) / 2) * (emptyingPanC - fillStoreC);
}

/**
 * Heat of the water that a fill moved beyond what the pan holds, and which has come home already [J]. It is
 * taken to be as warm as what comes home when the fill ends.
 */
export function overfilledHeatJ(situation: Situation): number {
  const { state, site } = situation;
  const beyondL = state.meter.filledL - panVolumeL(site);
  if (beyondL <= 0) return 0;
  const { flowLMin } = flowOf(situation);
  const { coldC, hotC } = endsOf(situation, flowLMin);
  // A litre a minute for as many minutes.
  return coldC === null || hotC === null ? 0 : streamHeatW(1, hotC, coldC, coldC) * 60 * beyondL;
}

/** What the pump has moved since a fill began, after the time since the last step [L]. */
export function filledAfter(filledL: number, situation: Situation): number {
  if (situation.state.phase.name !== 'filling') return filledL;
  return filledL + Math.max(0, flowOf(situation).flowLMin) * (situation.elapsedMs / 60_000);
}

/**
 * Mean temperature of the pan's water [°C]; null when it cannot be told. While the pump runs, water warms
 * from one end to the other. Once it stands, outlet and sheet lie in the same water, and what is in the
 * inlet pipe goes its own way.
 */
export function panWaterC(situation: Situation): number | null {
  const { readings, state } = situation;
  if (isPumping(state)) {
    const { coldC, hotC } = endsOf(situation, flowOf(situation).flowLMin);
    if (coldC !== null && hotC !== null) return (coldC + hotC) / 2;
  }
  const outletC = good(readings.panOutletC);
  const sheetC = good(readings.panSheetC);
  return outletC === null || sheetC === null ? (outletC ?? sheetC) : (outletC + sheetC) / 2;
}
