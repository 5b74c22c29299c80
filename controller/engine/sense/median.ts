import type { Sample } from '../state.ts';

/**
 * Median of three samples; of fewer the newest, since two cannot outvote each other.
 *
 * @param recent - One sample or more, oldest first; the newest three count.
 */
export function median(recent: readonly Sample[]): number {
  const count = recent.length;
  const newest = count > 0 ? recent[count - 1] : undefined;
  if (newest === undefined) return Number.NaN;
  const previous = count > 2 ? recent[count - 2] : undefined;
  const oldest = count > 2 ? recent[count - 3] : undefined;
  if (previous === undefined || oldest === undefined) return newest.value;
  const a = oldest.value;
  const b = previous.value;
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), newest.value));
}
