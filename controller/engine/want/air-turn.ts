import { lowPass } from '../blocks/low-pass.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { HarvestMemory } from '../state.ts';

/** The air is remembered with this time constant, to see when it falls [ms]. Design choices, as is the rest here. */
const airMs = 2_700_000;
/** Air that fell this far below its mean brings other weather, not a cloud [K]. */
const turnedK = 3;

type AirMemory = Pick<HarvestMemory, 'airMeanC' | 'airFellFromC' | 'airCameBack'>;

/**
 * Brings up to this step what is remembered of the air.
 *
 * The mean begins anew after a time in which no good sensor told of it: what it was then is no fall. Air that falls
 * by day and comes back is no weather that turned; a thermometer in the sun does so with each cloud.
 */
export function updateAir({ state, readings, elapsedMs, sunHeightDeg }: Situation): AirMemory {
  const { airMeanC: before, airFellFromC, airCameBack } = state.harvest;
  const airC = good(readings.ambientC);
  if (airC === null) return { airMeanC: null, airFellFromC: null, airCameBack };
  const airMeanC = lowPass(before, airC, elapsedMs, airMs);
  if (airFellFromC === null) {
    const falls = airMeanC - airC >= turnedK && (sunHeightDeg ?? 0) > 0;
    return { airMeanC, airFellFromC: falls ? airMeanC : null, airCameBack };
  }
  return airC < airFellFromC
    ? { airMeanC, airFellFromC, airCameBack }
    : { airMeanC, airFellFromC: null, airCameBack: true };
}

/** How far the air fell where that brings other weather, else null [K]. */
export function turnedByK({ state, readings }: Situation): number | null {
  const airC = good(readings.ambientC);
  const { airMeanC, airCameBack } = state.harvest;
  if (airC === null || airMeanC === null || airCameBack) return null;
  const fellK = airMeanC - airC;
  return fellK >= turnedK ? fellK : null;
}
