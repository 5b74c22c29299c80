import type { PhaseSpan } from '../../../shared-types/log.ts';
import type { TimeWindow } from './chart-look.ts';

/** A phase's piece of the ribbon: where it begins and how long it is, as shares of the window. */
export interface RibbonPiece {
  readonly span: PhaseSpan;
  readonly start: number;
  readonly length: number;
}

/** The parts of the phases that lie in the window. */
export function ribbonPieces(phases: readonly PhaseSpan[], { fromMs, toMs }: TimeWindow): RibbonPiece[] {
  const wholeMs = toMs - fromMs;
  return phases.flatMap((span) => {
    const startMs = Math.max(fromMs, span.fromMs);
    const endMs = Math.min(toMs, span.toMs);
    if (endMs <= startMs || wholeMs <= 0) return [];
    return [{ span, start: (startMs - fromMs) / wholeMs, length: (endMs - startMs) / wholeMs }];
  });
}
