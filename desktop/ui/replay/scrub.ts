import type { PhaseSpan } from '../../../shared-types/log.ts';

/** Index of the instant nearest to `tMs` in rising instants; -1 when there are none. */
export function nearestIndex(atMs: readonly number[], tMs: number): number {
  let low = 0;
  let high = atMs.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((atMs[middle] as number) <= tMs) low = middle;
    else high = middle;
  }
  if (high <= low) return high;
  return tMs - (atMs[low] as number) <= (atMs[high] as number) - tMs ? low : high;
}

/** The phase that held at an instant; undefined where nothing was logged. A span ends before its end. */
export function phaseAt(phases: readonly PhaseSpan[], tMs: number): PhaseSpan | undefined {
  const last = phases.at(-1);
  if (last !== undefined && tMs === last.toMs) return last;
  return phases.find((span) => span.fromMs <= tMs && tMs < span.toMs);
}

/** Start of the next phase after an instant, or of the one before it. */
export function phaseEdge(
  phases: readonly PhaseSpan[],
  tMs: number,
  direction: 'next' | 'previous',
): number | undefined {
  const starts = phases.map((span) => span.fromMs);
  return direction === 'next'
    ? starts.find((startMs) => startMs > tMs)
    : starts.findLast((startMs) => startMs < tMs);
}
