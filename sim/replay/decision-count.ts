import type { Decision } from '../../shared-types/engine.ts';
import type { DecisionCount } from '../../shared-types/what-if.ts';

/** What of a decision, taken now or read from a log, the loop gets to feel. */
export type Asked = Pick<Decision, 'phase' | 'outputs'>;

/** Counts what decisions ask of the loop. */
export interface DecisionCounter {
  /** @param elapsedMs - Steady time since the decision before [ms]; null when nobody knows. */
  add(decision: Asked, elapsedMs: number | null): void;
  count(): DecisionCount;
}

export function createDecisionCounter(): DecisionCounter {
  let before: Asked | undefined;
  let starts = 0;
  let fills = 0;
  let pumpRunMs = 0;
  return {
    add(decision, elapsedMs) {
      // What was asked at the step before held until this one.
      if (before !== undefined && runs(before)) pumpRunMs += elapsedMs ?? 0;
      if (before !== undefined && runs(decision) && !runs(before)) starts++;
      if (before !== undefined && decision.phase === 'filling' && before.phase !== 'filling') fills++;
      before = decision;
    },
    count: () => ({ starts, fills, pumpRunS: pumpRunMs / 1000 }),
  };
}

const runs = ({ outputs }: Asked) => outputs.pumpFraction > 0;
