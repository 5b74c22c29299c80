import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { clearSkyWM2 } from '../sun/position.ts';

/**
 * A bare sheet on water, in the order of size that such sheets have: its share of the sun, its loss to the air
 * and how wind adds to it are middles of ranges from memory (0.85 to 0.96, 8 to 15 W/m2K, 2 to 5 Ws/m3K), its
 * loss to a clear sky is the middle of the 40 to 80 W/m2 that are published for black surfaces at the
 * temperature of the air. They weigh what a day may still bring; no protection rests on them.
 */
export const absorbedFraction = 0.9;
export const skyLossWM2 = 60;
/** Below this much of a clear sky nothing can be told of the clouds [W/m2]; a design choice. */
export const leastLightWM2 = 100;
const stillLossWM2K = 11.5;
const windLossJM3K = 3.5;
/** Wind that is taken where none is measured [m/s]. */
const usualWindMs = 2;

/** Loss of the sheet to the air in that wind [W/m2K]. */
export const usualLossWM2K = stillLossWM2K + windLossJM3K * usualWindMs;

/** Loss of the sheet to the air [W/m2K]. */
export function lossWM2K({ readings }: Situation): number {
  return stillLossWM2K + windLossJM3K * (good(readings.windMs) ?? usualWindMs);
}

/** The most that a sheet takes, and the least that it loses: the ends of the same ranges. */
const mostAbsorbedFraction = 0.96;
const leastLossWM2K = 8;

/** True when even a sheet of the best kind under a clear sky would lose at the pan's temperature. */
export function cannotGain({ readings, facts, sunHeightDeg: height }: Situation): boolean {
  const airC = good(readings.ambientC);
  if (height === null || airC === null || facts.panC === null) return false;
  return mostAbsorbedFraction * clearSkyWM2(height) < leastLossWM2K * (facts.panC - airC);
}

/** What the pan would gain if it were full of water from the store bottom [W]; null when it cannot be told. */
export function dryGainW(situation: Situation): number | null {
  const { state, site } = situation;
  const { dryC } = state.harvest;
  const sourceC = warmestSourceC(situation);
  if (dryC === null || sourceC === null) return null;
  // A dry sheet stands where it would gain and lose the same, so its excess tells the gain of a colder one.
  return site.pan.grossAreaM2 * lossWM2K(situation) * (dryC - sourceC);
}

/** The water that would fill the pan, or the store behind it where that is warmer [°C]. */
function warmestSourceC({ readings, facts, site, sunHeightDeg: height }: Situation): number | null {
  const reservoirC = site.plumbing === 'reservoir' ? good(readings.reservoirC) : null;
  const dim = clearSkyWM2(height ?? 0) < leastLightWM2;
  // What was drawn has left cold water at the bottom, but less of it than a fill may take.
  const storeBottomC = dim ? facts.hottestStoreC : facts.storeBottomC;
  return reservoirC === null || storeBottomC === null ? storeBottomC : Math.max(reservoirC, storeBottomC);
}
