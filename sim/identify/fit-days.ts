import type { LogReader } from '../../controller/log/log.ts';
import type { LoopFit } from '../../shared-types/tuning.ts';
import { fitLoop } from './fit-loop.ts';
import type { GoOn } from './search.ts';
import { sameLoop } from './world/same-loop.ts';
import { type LoggedSpan, readSpan } from './world/span.ts';

export type DaysFitted =
  | { readonly ok: true; readonly fit: LoopFit }
  | { readonly ok: false; readonly why: readonly string[] };

/**
 * Fits logged days together. Days that cannot be used are left out and named in the verdicts.
 *
 * @param days - Kept days, rising. @param goOn - Told how far it is; false gives up.
 */
export function fitDays(reader: LogReader, days: readonly string[], goOn: GoOn = () => true): DaysFitted {
  const spans: LoggedSpan[] = [];
  const leftOut: string[] = [];
  for (const day of days) {
    const read = readSpan(reader, day);
    if (!read.ok) leftOut.push(`left out: ${read.why}`);
    else if (spans[0] !== undefined && !sameLoop(spans[0].site, read.span.site))
      leftOut.push(`left out: on ${day} the loop was another one by its site file`);
    else spans.push(read.span);
  }
  if (spans.length === 0) return { ok: false, why: leftOut };
  const fit = fitLoop(spans, goOn);
  return { ok: true, fit: { ...fit, verdicts: [...fit.verdicts, ...leftOut] } };
}
