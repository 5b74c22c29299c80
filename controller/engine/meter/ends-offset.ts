import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';

type Learnt = EngineState['learnt'];
type Night = EngineState['meter']['night'];

/** The pan has stood empty for so long before its two ends are compared, and then for as long again [ms]. */
const dryMs = 7_200_000;
const comparedMs = 7_200_000;
/** The sun is down for the comparison when it is this low [deg]. Design choices, all of them. */
const darkDeg = -3;
/** What the newest night counts for beside all those before. */
const newestFraction = 0.25;
/** Sensors that disagree by more have another trouble than their make [K]. */
const mostK = 2;
/** The two ends of a dry pan may truly differ by this: a standard deviation [K]; a design choice. */
export const endsOffsetSdK = 0.3;

/**
 * Compares outlet and inlet in the night on a pan that stands empty: two sensors in the same air, under the same
 * sky. Small differences are then measured by what is left of the sensors' own error.
 *
 * It moves no water and costs no heat. That both ends feel the same is an assumption of ours.
 */
export function compareEnds(
  before: Night,
  { state, readings, runMs, elapsedMs, sunHeightDeg }: Situation,
): Night {
  const { phase } = state;
  if (phase.name !== 'empty') return null;
  const dark = sunHeightDeg !== null && sunHeightDeg <= darkDeg;
  if (!dark || runMs - phase.sinceMs < dryMs || (before !== null && before.forMs >= comparedMs))
    return before;
  const outletC = good(readings.panOutletC);
  const inletC = good(readings.panInletC);
  if (outletC === null || inletC === null) return before;
  const { sumKMs, forMs } = before ?? { sumKMs: 0, forMs: 0 };
  return { sumKMs: sumKMs + (outletC - inletC) * elapsedMs, forMs: forMs + elapsedMs };
}

/** What was learnt, with a night whose comparison has just been completed. */
export function learnEnds(learnt: Learnt, before: Night, now: Night): Learnt {
  if (now === null || now === before || now.forMs < comparedMs) return learnt;
  const offsetK = now.sumKMs / now.forMs;
  if (Math.abs(offsetK) > mostK) return learnt;
  const { endsOffsetK: beforeK } = learnt;
  const endsOffsetK = beforeK === undefined ? offsetK : beforeK + newestFraction * (offsetK - beforeK);
  return { ...learnt, endsOffsetK };
}

export function withNight(meter: EngineState['meter'], night: Night): EngineState['meter'] {
  return meter.night === night ? meter : { ...meter, night };
}
