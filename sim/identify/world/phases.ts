import type { PhaseName } from '../../../shared-types/engine.ts';

type Phases = readonly PhaseName[];

/** In these the pan is either full or empty, and nothing flows from one vessel to the other. */
export const settledPhases: Phases = ['circulating', 'resting', 'empty'];
/** In these the pan is full. */
export const fullPhases: Phases = ['circulating', 'resting'];
/** In these there is water in the pan, and no less than there was. */
export const wetPhases: Phases = ['filling', ...fullPhases];
