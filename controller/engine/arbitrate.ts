import { coolingCommand } from './hazards/night-cooling.ts';
import { type Hazard, hazards } from './hazards/table.ts';
import { leaseCommand } from './operator/lease.ts';
import type { Command, Situation } from './situation.ts';
import { exerciseCommand } from './speed/exercise.ts';
import { want } from './want/want.ts';

export interface HazardCommand extends Command {
  readonly hazard: Hazard;
}

/** The most severe protection that holds now. */
export function hazardCommand(situation: Situation): HazardCommand | null {
  for (const hazard of hazards) {
    const values = hazard.when(situation);
    if (values !== null) {
      const cause = { code: hazard.code, values };
      return { goal: hazard.goal(situation), cause, urgent: true, by: 'hazard', hazard };
    }
  }
  return null;
}

/** What is to be done: protections over the operator over the loop's own wish. */
export function arbitrate(situation: Situation, hazard: Command | null): Command {
  return (
    hazard ??
    leaseCommand(situation) ??
    coolingCommand(situation) ??
    exerciseCommand(situation) ??
    want(situation)
  );
}
