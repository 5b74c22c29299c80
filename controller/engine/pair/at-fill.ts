import type { Site } from '../../../shared-types/site.ts';
import { sourceOf } from '../meter/ends.ts';
import { panVolumeL } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { clearSkyWM2 } from '../sun/position.ts';
import { absorbedFraction, leastLightWM2, lossWM2K, skyLossWM2 } from '../want/collector.ts';
import { fillsToday } from '../want/refill.ts';
import { streamHeatW } from '../water.ts';
import type { PairOffset } from './uncertainty.ts';

/** Water of a fresh fill has passed the pan once, and a little, when it is compared; a design choice. */
const turnovers = 1.2;
/** Doubt in what the sun gives, as a share of it, and in the comparison itself [K]. Design choices. */
const gainDoubt = 0.25;
const leastSdK = 0.1;
/** A comparison of less worth than this is not made [K]. */
const mostSdK = 0.7;

/** Time in which the pump changes the pan's water once [ms]. */
export function turnoverMs(site: Site): number {
  return (panVolumeL(site) * 60_000) / site.pump.ratedFlowLMin;
}

/** Time after a fill at which the pair is compared [ms]. */
export function comparedMs(site: Site): number {
  return turnovers * turnoverMs(site);
}

/** By how much the pan warms the water that passes it [K], and the standard deviation of that [K]. */
export interface Warming {
  readonly warmedK: number;
  readonly sdK: number;
}

/**
 * By how much a fresh fill has to be warmed that has just passed the pan once; null at any other step, and where it
 * cannot be told well enough.
 *
 * A dry sheet stands far above the air, so that it tells well how clear the sky is; sensors that are wrong by a
 * kelvin hardly matter to that. The water that follows it through the pan is warmed by what such a sky gives. In the
 * low sun in which a pan is filled that is little, and so is the doubt in it.
 */
export function warmingAtFill(situation: Situation): Warming | null {
  const { state, site, readings, sunHeightDeg: height, runMs, elapsedMs } = situation;
  const { phase, harvest } = state;
  if (phase.name !== 'circulating' || !phase.afterFill) return null;
  const afterMs = runMs - phase.sinceMs - comparedMs(site);
  const { dryTakenWM2, dryClearWM2, clearFraction } = harvest;
  if (afterMs < 0 || afterMs >= elapsedMs || dryTakenWM2 === null || height === null) return null;
  if (!harvest.drySteady || harvest.risingWM2 <= 0 || fillsToday(situation) !== 1) return null;
  const coldC = good(readings.panInletC) ?? good(readings[sourceOf(site)]);
  const airC = good(readings.ambientC);
  const flowLMin = good(readings.flowLMin) ?? state.learnt['fullFlowLMin'] ?? site.pump.ratedFlowLMin;
  if (coldC === null || airC === null || flowLMin <= 0) return null;
  // In daylight what is taken in goes with the sun; in the twilight the sun comes on top of it.
  const clearWM2 = clearSkyWM2(height);
  const takenWM2 =
    dryClearWM2 >= leastLightWM2
      ? (dryTakenWM2 * clearWM2) / dryClearWM2
      : dryTakenWM2 + absorbedFraction * clearFraction * (clearWM2 - dryClearWM2);
  const gainW = site.pan.grossAreaM2 * (takenWM2 - skyLossWM2 - lossWM2K(situation) * (coldC - airC));
  const warmedK = gainW / streamHeatW(flowLMin, coldC + 1, coldC, coldC);
  const sdK = leastSdK + gainDoubt * Math.abs(warmedK);
  return sdK > mostSdK ? null : { warmedK, sdK };
}

/** What pan outlet and store bottom disagree by after a fill; null where the pan's water comes from elsewhere. */
export function pairAtFill({ readings, site }: Situation, { warmedK, sdK }: Warming): PairOffset | null {
  const outletC = good(readings.panOutletC);
  const storeC = good(readings.storeBottomC);
  if (site.plumbing === 'reservoir' || outletC === null || storeC === null) return null;
  return { offsetK: outletC - storeC - warmedK, sdK };
}
