import type { ReasonCode } from '../../../shared-types/reasons.ts';
import { commissionDemand } from '../commission/demand.ts';
import type { Command, Goal, Situation } from '../situation.ts';
import type { Lease } from '../state.ts';

const demands: Readonly<
  Record<Exclude<Lease['kind'], 'commission'>, { readonly goal: Goal; readonly code: ReasonCode }>
> = {
  'run-pump': { goal: 'run', code: 'operator-run' },
  empty: { goal: 'empty', code: 'operator-empty' },
  rest: { goal: 'rest', code: 'operator-rest' },
};

/** What the operator's lease demands while it lasts. */
export function leaseCommand(situation: Situation): Command | null {
  const { state, runMs } = situation;
  const { lease } = state.operator;
  if (lease === null) return null;
  const { goal, code } = lease.kind === 'commission' ? commissionDemand(situation) : demands[lease.kind];
  const leftMin = (lease.untilMs - runMs) / 60_000;
  return { goal, cause: { code, values: { leftMin } }, urgent: false, by: 'operator' };
}
