import type { Sample } from '../state.ts';

/**
 * Median of three samples; of fewer the newest, since two cannot outvote each other.
 *
 * @param recent - One sample or more, oldest first; the newest three count.
 */
export function median(recent: readonly Sample[]): number {
  const count = recent.length;
  if (count < 3) return recent.at(-1)?.value ?? Number.NaN;
  const a = (recent[count - 3] as Sample).value;
  const b = (recent[count - 2] as Sample).value;
  const c = (recent[count - 1] as Sample).value;
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
