import type { Site } from '../../../shared-types/site.ts';
import { panVolumeL } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { clearSkyWM2 } from '../sun/position.ts';
import { absorbedFraction, lossWM2K, skyLossWM2 } from '../want/collector.ts';
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

/**
 * What pan outlet and store bottom disagree by after a fill, or null.
 *
 * A dry sheet stands far above the air, so that it tells well how clear the sky is; sensors that are wrong by a
 * kelvin hardly matter to that. The water that follows it through the pan has to be warmer by what such a sky
 * gives. In the low sun in which a pan is filled that is little, and so is the doubt in it.
 */
export function measureAtFill(situation: Situation): PairOffset | null {
  const { state, site, readings, sunHeightDeg: height, runMs, elapsedMs } = situation;
  const { phase, harvest } = state;
  if (phase.name !== 'circulating' || !phase.afterFill || site.plumbing === 'reservoir') return null;
  const afterMs = runMs - phase.sinceMs - comparedMs(site);
  if (afterMs < 0 || afterMs >= elapsedMs || harvest.dryClearFraction === null || height === null)
    return null;
  const outletC = good(readings.panOutletC);
  const storeC = good(readings.storeBottomC);
  const airC = good(readings.ambientC);
  if (outletC === null || storeC === null || airC === null) return null;
  const lightWM2 = absorbedFraction * harvest.dryClearFraction * clearSkyWM2(height);
  const gainW = site.pan.grossAreaM2 * (lightWM2 - skyLossWM2 - lossWM2K(situation) * (storeC - airC));
  const flowLMin = good(readings.flowLMin) ?? state.learnt['fullFlowLMin'] ?? site.pump.ratedFlowLMin;
  if (flowLMin <= 0) return null;
  const warmedK = gainW / streamHeatW(flowLMin, storeC + 1, storeC, storeC);
  const sdK = leastSdK + gainDoubt * Math.abs(warmedK);
  return sdK > mostSdK ? null : { offsetK: outletC - storeC - warmedK, sdK };
}
