import type { ReasonCode } from '../../../shared-types/reasons.ts';
import type { Command, Goal, Situation } from '../situation.ts';
import type { Lease } from '../state.ts';

const demands: Readonly<Record<Lease['kind'], { readonly goal: Goal; readonly code: ReasonCode }>> = {
  'run-pump': { goal: 'run', code: 'operator-run' },
  empty: { goal: 'empty', code: 'operator-empty' },
  rest: { goal: 'rest', code: 'operator-rest' },
};

/** What the operator's lease demands while it lasts. */
export function leaseCommand({ state: { operator }, runMs }: Situation): Command | null {
  const { lease } = operator;
  if (lease === null) return null;
  const { goal, code } = demands[lease.kind];
  const leftMin = (lease.untilMs - runMs) / 60_000;
  return { goal, cause: { code, values: { leftMin } }, urgent: false, by: 'operator' };
}
