import type { LoopFit } from '../../../../shared-types/tuning.ts';

type Kept = LoopFit | null | undefined;

/** Whether two kept fits differ. What is not known of either cannot be told apart: undefined equals all. */
export const otherFit = (then: Kept, now: Kept): boolean =>
  then !== undefined && now !== undefined && JSON.stringify(then) !== JSON.stringify(now);
