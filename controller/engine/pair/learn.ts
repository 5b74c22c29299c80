import { flows, gainBounds, isFlushed } from '../sense/doubt/gain.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';
import { pairAtFill, type Warming, warmingAtFill } from './at-fill.ts';
import { type PairOffset, pairOffset } from './uncertainty.ts';

type Learnt = EngineState['learnt'];

/** An offset of this or more is not learnt but a fault of a sensor [K]; a design choice. */
export const leastTrustedOffsetK = 2;
/** No comparison on a roof is better than this, however often it is made [K]; a design choice. */
const leastSdK = 0.1;
/** A measurement this many standard deviations off what was known says that a sensor has changed. */
const changedSds = 3;

/**
 * Takes a comparison of pan outlet and store bottom, made when both must read the same, into what is known.
 *
 * @param measuredK - What the outlet showed more, less what it truly was warmer.
 * @param sdK - Standard deviation of that, above 0.
 * @returns What is known then: the mean weighted by certainty, or the new one alone where both cannot be true.
 * An offset beyond 2 K is kept as 2 K, and casts doubt on both sensors.
 */
export function notePair(learnt: Learnt, measuredK: number, sdK: number): Learnt {
  const before = pairOffset(learnt);
  const ownSdK = Math.max(leastSdK, sdK);
  const apart = Math.abs(measuredK - before.offsetK) > changedSds * Math.hypot(before.sdK, ownSdK);
  const weight = apart ? 1 : before.sdK ** 2 / (before.sdK ** 2 + ownSdK ** 2);
  const offsetK = before.offsetK + weight * (measuredK - before.offsetK);
  const outletOffsetSdK = apart ? ownSdK : Math.max(leastSdK, Math.sqrt(1 - weight) * before.sdK);
  const outletOffsetK = Math.min(Math.max(offsetK, -leastTrustedOffsetK), leastTrustedOffsetK);
  return { ...learnt, outletOffsetK, outletOffsetSdK };
}

/** It has to have been dark for this long [ms]: the pan's own warmth is gone by then; a design choice. */
const duskMs = 1_800_000;
/** While the pump runs through the dark, the pair is noted this often [ms]; a design choice. */
const noteMs = 3_600_000;

/**
 * What the pair's offset is by the readings of now: null unless water has circulated long enough in the dark. A
 * pan loses a little then; the middle of what it may lose is taken off, a quarter of its range is the doubt in it.
 */
export function measurePair(situation: Situation): PairOffset | null {
  const { readings, site, state, runMs } = situation;
  const { darkMs } = state.watch;
  const outletC = good(readings.panOutletC);
  const storeC = good(readings.storeBottomC);
  if (darkMs === null || runMs - darkMs < duskMs || outletC === null || storeC === null) return null;
  // Behind an exchanger the store's water is another than the pan's.
  if (site.plumbing === 'reservoir' || !isFlushed(situation) || !flows(situation)) return null;
  const { leastK, mostK } = gainBounds(situation, storeC, true);
  return { offsetK: outletC - storeC - (leastK + mostK) / 2, sdK: (mostK - leastK) / 4 };
}

/** Brings what is known of the pair up to this step. */
export function learnPair(situation: Situation): Learnt {
  const { learnt, phase } = situation.state;
  if (phase.name !== 'circulating') return learnt;
  const warming = warmingAtFill(situation);
  return warming === null
    ? noteSound(learnt, measureAtTheHour(situation))
    : learnEndsAtFill(situation, warming, noteSound(learnt, pairAtFill(situation, warming)));
}

/** What no two sound sensors can disagree by is a fault, and not to be learnt. */
function noteSound(learnt: Learnt, measured: PairOffset | null): Learnt {
  if (measured === null || Math.abs(measured.offsetK) >= leastTrustedOffsetK) return learnt;
  return notePair(learnt, measured.offsetK, measured.sdK);
}

/** What a fill says of the outlet beside the inlet, while no dry night has said it. */
function learnEndsAtFill({ readings }: Situation, { warmedK }: Warming, learnt: Learnt): Learnt {
  const outletC = good(readings.panOutletC);
  const inletC = good(readings.panInletC);
  if (learnt['endsOffsetK'] !== undefined || outletC === null || inletC === null) return learnt;
  const endsOffsetK = outletC - inletC - warmedK;
  return Math.abs(endsOffsetK) >= leastTrustedOffsetK ? learnt : { ...learnt, endsOffsetK };
}

function measureAtTheHour(situation: Situation): PairOffset | null {
  const { state, runMs, elapsedMs } = situation;
  const heldMs = runMs - state.phase.sinceMs;
  // Asked before the rest, since it is nearly always so.
  return Math.floor(heldMs / noteMs) === Math.floor((heldMs - elapsedMs) / noteMs)
    ? null
    : measurePair(situation);
}
