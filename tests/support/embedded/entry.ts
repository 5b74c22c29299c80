/** What a board runs: the step, and the state to begin with. Remarks and sentences are for whoever shows them. */
export { initialState } from '../../../controller/engine/state.ts';
export { step } from '../../../controller/engine/step.ts';
