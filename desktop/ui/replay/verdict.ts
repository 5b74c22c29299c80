import type { ReplayReport } from '../../../shared-types/log.ts';
import type { NumberFormats } from '../format/numbers.ts';
import { en } from '../text/en.ts';

type Counts = Pick<ReplayReport, 'same' | 'differences' | 'steps' | 'leftOut'>;

/** What a replay found in one sentence: what could not be replayed is not called the same. */
export function verdictText(
  { same, differences, steps, leftOut }: Counts,
  { count }: Pick<NumberFormats, 'count'>,
): string {
  const { replay } = en;
  if (same) return replay.same(count(steps));
  if (differences === 0) return replay.inPart(count(steps), count(leftOut));
  return replay.different(count(differences), count(steps));
}
