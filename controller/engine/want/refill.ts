import type { Situation } from '../situation.ts';
import { electricityWorth } from './pump-cost.ts';

/** Wear of valves and liner by a fill, as heat a square metre [J/m2]. Design choices, as are the rest here. */
const wearJM2 = 30_000;
/** Each fill of the day makes the next one dearer by this share. */
const dearerFraction = 0.5;
/** A pan that was emptied for want of gain stays empty for this long [min]. */
export const leastEmptyMin = 15;

/** Fills of the pan since the local day began. */
export function fillsToday({ state: { meter } }: Situation): number {
  return meter.total.fills - meter.dayStart.fills;
}

/** What a fill costs by itself [J]: electricity, and wear. */
export function fillCostJ({ site, settings }: Situation): number {
  return electricityWorth * site.pump.ratedPowerW * settings.fillTimeS + wearJM2 * site.pan.grossAreaM2;
}

/**
 * What it costs to empty the pan now and to fill it again when the sun is back [J]: the fill, and the gain that
 * is missed while the pan runs empty, waits and runs full. It becomes dearer with each fill of the day.
 */
export function refillCostJ(situation: Situation): number {
  const { state, settings } = situation;
  const waitS = leastEmptyMin * 60 + settings.fillDelayS;
  const missedS = waitS + (settings.fillTimeS + settings.drainTimeS) / 2;
  const missedJ = ((state.harvest.hourJ ?? 0) / 3600) * missedS;
  return (fillCostJ(situation) + missedJ) * (1 + dearerFraction * fillsToday(situation));
}
