import type { ReplayReport } from '../../shared-types/log.ts';
import type { ReasonCode } from '../../shared-types/reasons.ts';

/** Counts the steps that differ, and the reasons of those that decided otherwise. */
export interface Causes {
  add(fields: readonly string[], logged: ReasonCode, replayed: ReasonCode): void;
  decidedOtherwise(): number;
  byField(): ReplayReport['byField'];
  byCause(): ReplayReport['byCause'];
}

const mostCauses = 20;

export function createCauses(): Causes {
  const fieldSteps = new Map<string, number>();
  let decidedOtherwise = 0;
  const pairs = new Map<string, { logged: ReasonCode; replayed: ReasonCode; steps: number }>();
  return {
    add(fields, logged, replayed) {
      for (const field of fields) fieldSteps.set(field, (fieldSteps.get(field) ?? 0) + 1);
      if (fields.every((field) => field.startsWith('total.'))) return;
      decidedOtherwise++;
      const key = `${logged}/${replayed}`;
      const pair = pairs.get(key) ?? { logged, replayed, steps: 0 };
      pair.steps++;
      pairs.set(key, pair);
    },
    decidedOtherwise: () => decidedOtherwise,
    byField: () => Object.fromEntries(fieldSteps),
    // Sorting keeps those that are equally frequent in the order in which they were met.
    byCause: () => [...pairs.values()].sort((a, b) => b.steps - a.steps).slice(0, mostCauses),
  };
}
