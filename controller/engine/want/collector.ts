import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';

/**
 * A bare sheet on water, in the order of size that such sheets have: its share of the sun, its loss to the air
 * and how wind adds to it are middles of ranges from memory (0.85 to 0.96, 8 to 15 W/m2K, 2 to 5 Ws/m3K), its
 * loss to a clear sky is the middle of the 40 to 80 W/m2 that are published for black surfaces at the
 * temperature of the air. They weigh what a day may still bring; no protection rests on them.
 */
export const absorbedFraction = 0.9;
export const skyLossWM2 = 60;
const stillLossWM2K = 11.5;
const windLossJM3K = 3.5;
/** Wind that is taken where none is measured [m/s]. */
const usualWindMs = 2;

/** Loss of the sheet to the air [W/m2K]. */
export function lossWM2K({ readings }: Situation): number {
  return stillLossWM2K + windLossJM3K * (good(readings.windMs) ?? usualWindMs);
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
function warmestSourceC({ readings, facts, site }: Situation): number | null {
  const reservoirC = site.plumbing === 'reservoir' ? good(readings.reservoirC) : null;
  const { storeBottomC } = facts;
  return reservoirC === null || storeBottomC === null ? storeBottomC : Math.max(reservoirC, storeBottomC);
}
