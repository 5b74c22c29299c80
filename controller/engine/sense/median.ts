import type { Sample } from '../state.ts';

/**
 * Median of three samples; of fewer the newest, since two cannot outvote each other.
 *
 * @param recent - One sample or more, oldest first; the newest three count.
 */
export function median(recent: readonly Sample[]): number {
  const [a, b, c] = recent.slice(-3).map((sample) => sample.value);
  if (a === undefined) return Number.NaN;
  if (b === undefined || c === undefined) return b ?? a;
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
