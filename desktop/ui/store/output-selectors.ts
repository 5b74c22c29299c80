import type { Feedback, Outputs } from '../../../shared-types/engine.ts';
import { selectReadingFreshForMs } from './decision-selectors.ts';
import { selectDecision, selectLagMs, selectSite, selectSnapshot } from './live-selectors.ts';
import type { LiveState } from './live-store.ts';

/** What pump and drain do: by what the device says, else by what it was told. */
type Select<Value> = (state: LiveState) => Value;

const safe: Outputs = { pumpFraction: 0, drainOpen: true, drainPumpOn: false, exchangerPumpOn: false };
const told = (state: LiveState): Outputs => selectDecision(state)?.outputs ?? safe;

/** What the device last said of its outputs, if that is of now. */
const said: Select<Feedback | null> = (state) => {
  const feedback = selectSnapshot(state)?.device?.feedback ?? null;
  return feedback === null || feedback.ageMs > selectReadingFreshForMs(state) ? null : feedback;
};
const saidOfDrain: Select<boolean | null> = (state) =>
  selectSite(state)?.drain === 'drain-valve' ? (said(state)?.drainOpen ?? null) : null;

export const selectPumpTold: Select<number> = (state) => told(state).pumpFraction;
export const selectDrainTold: Select<boolean> = (state) => told(state).drainOpen;
export const selectDrainPumpOn: Select<boolean> = (state) => told(state).drainPumpOn;
export const selectExchangerPumpOn: Select<boolean> = (state) => told(state).exchangerPumpOn;
export const selectHeatDumpOn: Select<boolean> = (state) => told(state).heatDumpOn === true;

export const selectPumpFraction: Select<number> = (state) =>
  said(state)?.pumpFraction ?? selectPumpTold(state);
export const selectDrainOpen: Select<boolean> = (state) => saidOfDrain(state) ?? selectDrainTold(state);

/** True while the device says that its pump runs though it is told not to, or rests though it is told to run. */
export const selectPumpDiffers: Select<boolean> = (state) =>
  selectPumpFraction(state) > 0 !== selectPumpTold(state) > 0;
export const selectDrainDiffers: Select<boolean> = (state) =>
  selectDrainOpen(state) !== selectDrainTold(state);

/** True while the pump runs and nothing shows yet that water moves. */
export const selectFlowUnproven: Select<boolean> = (state) =>
  selectPumpFraction(state) > 0 && !waterMoves(state);

/** True while the pump runs, water is known to move, and the news of it are fresh. */
export const selectFlowing: Select<boolean> = (state) =>
  selectPumpFraction(state) > 0 && waterMoves(state) && selectLagMs(state) === 0;

/** Of a pump that runs against what it was told, the flow sensor alone can tell. */
function waterMoves(state: LiveState): boolean {
  const belief = selectDecision(state)?.belief;
  if (belief === undefined) return false;
  const flow = belief.readings.flowLMin;
  return belief.flowProven || (selectPumpTold(state) === 0 && flow?.quality === 'good' && flow.value > 0);
}

/** True while the pan empties. */
export const selectDraining: Select<boolean> = (state) =>
  selectDecision(state)?.phase === 'emptying' && selectDrainOpen(state) && selectLagMs(state) === 0;

export const selectExchanging: Select<boolean> = (state) =>
  selectExchangerPumpOn(state) && selectLagMs(state) === 0;
