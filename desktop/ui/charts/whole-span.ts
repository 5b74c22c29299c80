import type { DayCurves } from '../../../shared-types/log.ts';
import type { TimeWindow } from './chart-look.ts';

/** The span that all curves of a day fill. */
export function wholeSpan({ atMs }: DayCurves): TimeWindow {
  const fromMs = atMs[0] ?? 0;
  return { fromMs, toMs: Math.max(fromMs + 60_000, atMs.at(-1) ?? 0) };
}
