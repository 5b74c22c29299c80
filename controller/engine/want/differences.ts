import { pairOffset, uncomparedSdK } from '../pair/uncertainty.ts';
import type { Situation } from '../situation.ts';

/**
 * Least differences over the standard deviation of the pair's offset; design choices. A stop at twice that
 * ends a circulation that brings nothing in all but one case of forty (normal distribution). Between start
 * and stop half as much again, since an offset that warms with the water moves one against the other.
 * Uncompared sensors, with their 1 K, so get 2 K and 3 K.
 */
const stopPerSd = 2;
const bandPerSd = 3;
/**
 * Behind an exchanger outlet and store bottom are never alike and cannot be compared. Once outlet and inlet are,
 * a circulation that brings nothing is noticed by them, and the pair need not be safe on its own [K]; a design choice.
 */
const exchangerSdK = 0.5;

export interface Differences {
  readonly startDifferenceK: number;
  readonly stopDifferenceK: number;
}

/** What start and stop differences become where a pair of sensors is known with this standard deviation. */
export function differencesFor(set: Differences, sdK: number): Differences {
  const { startDifferenceK, stopDifferenceK } = set;
  const stopK = Math.max(stopDifferenceK, stopPerSd * sdK);
  const startK = Math.max(startDifferenceK, stopK + bandPerSd * sdK);
  return stopK === stopDifferenceK && startK === startDifferenceK
    ? set
    : { startDifferenceK: startK, stopDifferenceK: stopK };
}

/**
 * The differences at which the pump starts and stops: as set, but not below what the sensors can tell.
 * Where the sheet stands in for the outlet, what was learnt of the outlet does not count.
 */
export function effectiveDifferences({ state, facts, site, settings }: Situation): Differences {
  const behindExchanger = site.plumbing === 'reservoir' && state.learnt['endsOffsetK'] !== undefined;
  const pairSdK = behindExchanger ? exchangerSdK : pairOffset(state.learnt).sdK;
  const sdK = facts.panIsOutlet ? pairSdK : uncomparedSdK;
  return differencesFor(settings, sdK);
}
