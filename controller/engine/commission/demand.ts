import type { ReasonCode } from '../../../shared-types/reasons.ts';
import type { Site } from '../../../shared-types/site.ts';
import { canEmpty, panVolumeL } from '../pan.ts';
import { type Goal, isPumping, type Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';
import { type ActiveStep, isUnderWay } from './memory.ts';

interface Demand {
  readonly goal: Goal;
  readonly code: ReasonCode;
}

const demands: Readonly<Record<ActiveStep, Demand>> = {
  emptying: { goal: 'empty', code: 'commissioning-emptying' },
  filling: { goal: 'run', code: 'commissioning-filling' },
  flowing: { goal: 'run', code: 'commissioning-flowing' },
  draining: { goal: 'empty', code: 'commissioning-draining' },
};

/** The step with which a run begins: a pan that cannot be emptied is taken as it is. */
export function firstStep(site: Site): ActiveStep {
  return canEmpty(site) ? 'emptying' : 'filling';
}

/** What the commissioning run demands of the loop now. */
export function commissionDemand({ state: { commission }, site }: Situation): Demand {
  if (!isUnderWay(commission)) return demands[firstStep(site)];
  return demands[commission.step];
}

/** True while the run waits for what a person may see: the pan full, or the pan empty. */
export function isConfirmable(state: EngineState): boolean {
  const { commission } = state;
  if (commission === null) return false;
  return commission.step === (isPumping(state) ? 'filling' : 'draining');
}

/** The pan's water is changed so often, and water flows for so long at least, before it is judged [s]. */
const turnovers = 3;
const leastFlowS = 2700;

/** How long water flows before pump and sensors are judged [s]. */
export function flowingS({ site }: Situation): number {
  return Math.max(leastFlowS, (turnovers * 60 * panVolumeL(site)) / site.pump.ratedFlowLMin);
}

/** A pan that is not seen empty within so many drain times does not empty. */
export const mostDrainTimes = 2;
/** Least times of the pump, and what else a run may have to wait for [s]. Design choices, all of them. */
const spareS = 3600;

/** Time after which a run ends, whatever it waits for [ms]. */
export function commissionMs(situation: Situation): number {
  const { drainTimeS, fillTimeoutS } = situation.settings;
  return 1000 * (2 * mostDrainTimes * drainTimeS + fillTimeoutS + flowingS(situation) + spareS);
}
