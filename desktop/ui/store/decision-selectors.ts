import type { Outputs, PhaseName } from '../../../shared-types/engine.ts';
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

const safe: Outputs = { pumpFraction: 0, drainOpen: true, drainPumpOn: false, exchangerPumpOn: false };
const outputs = (state: LiveState): Outputs => selectDecision(state)?.outputs ?? safe;
export const selectPumpFraction: Select<number> = (state) => outputs(state).pumpFraction;
export const selectDrainOpen: Select<boolean> = (state) => outputs(state).drainOpen;
export const selectDrainPumpOn: Select<boolean> = (state) => outputs(state).drainPumpOn;
export const selectHeatDumpOn: Select<boolean> = (state) => outputs(state).heatDumpOn === true;

/** True while the pump is told to run and nothing shows yet that water moves. */
export const selectFlowUnproven: Select<boolean> = (state) =>
  selectPumpFraction(state) > 0 && selectDecision(state)?.belief.flowProven === false;

/** True while the pump is told to run, water is known to move, and the news of it are fresh. */
export const selectFlowing: Select<boolean> = (state) =>
  selectPumpFraction(state) > 0 &&
  selectDecision(state)?.belief.flowProven === true &&
  selectLagMs(state) === 0;

/** True while the pan empties through an open drain. */
export const selectDraining: Select<boolean> = (state) =>
  selectPhase(state) === 'emptying' && selectDrainOpen(state) && selectLagMs(state) === 0;

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
