import type { PhaseName } from '../../../shared-types/engine.ts';
import {
  selectDecision,
  selectFreshForMs,
  selectLagMs,
  selectSite,
  selectSnapshot,
} from './live-selectors.ts';
import type { LiveState } from './live-store.ts';

/** Single values of the newest decision; undefined before the first. */
type Select<Value> = (state: LiveState) => Value;

export const selectPhase: Select<PhaseName | undefined> = (state) => selectDecision(state)?.phase;
export const selectPhaseForMs: Select<number | undefined> = (state) => selectDecision(state)?.phaseForMs;
export const selectReasonText: Select<string | undefined> = (state) =>
  selectDecision(state)?.reasons.phase.text;
export const selectLease = (state: LiveState) => selectDecision(state)?.lease ?? null;
export const selectMeter = (state: LiveState) => selectDecision(state)?.meter;
export const selectWater = (state: LiveState) => selectDecision(state)?.belief.water ?? 'unknown';
export const selectDifferenceK: Select<number | null | undefined> = (state) =>
  selectDecision(state)?.belief.differenceK;

/**
 * Age up to which a reading counts as of now [ms of the controller's clock]. Beside a simulated loop
 * with a fast clock a second of the wall is many of its seconds.
 */
export const selectReadingFreshForMs: Select<number> = (state) => {
  const stepMs = 1000 * (selectSite(state)?.control.stepS ?? 5);
  return Math.max(20_000, 3 * stepMs, 3000 * (selectSnapshot(state)?.clockSpeed ?? 1));
};

/** True when nothing on the screen may pass for the present. */
export const selectLagging: Select<boolean> = (state) =>
  selectSnapshot(state) !== null && selectLagMs(state) >= selectFreshForMs(state);
