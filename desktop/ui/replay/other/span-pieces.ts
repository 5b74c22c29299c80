import type { TimeWindow } from '../../charts/chart-look.ts';

/** A span's piece of a strip: where it begins and how long it is, as shares of the window. */
interface Piece {
  readonly start: number;
  readonly length: number;
}

/** The parts of spans that lie in a window, those that overlap or touch as one. */
export function spanPieces(spans: readonly TimeWindow[], { fromMs, toMs }: TimeWindow): readonly Piece[] {
  const inside = spans
    .map((span) => ({ fromMs: Math.max(fromMs, span.fromMs), toMs: Math.min(toMs, span.toMs) }))
    .filter((span) => span.toMs > span.fromMs)
    .sort((one, other) => one.fromMs - other.fromMs);
  const merged: { fromMs: number; toMs: number }[] = [];
  for (const span of inside) {
    const before = merged.at(-1);
    if (before === undefined || span.fromMs > before.toMs) merged.push(span);
    else before.toMs = Math.max(before.toMs, span.toMs);
  }
  const wholeMs = toMs - fromMs;
  return merged.map((span) => ({
    start: (span.fromMs - fromMs) / wholeMs,
    length: (span.toMs - span.fromMs) / wholeMs,
  }));
}
