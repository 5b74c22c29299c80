import { minuteMs } from './minutes.ts';
import type { LoggedSpan } from './span.ts';

/**
 * Share of the day's logged minutes in which a channel was read well, 0 to 1.
 *
 * @param values - Its column of the span's minutes; undefined: it was never read.
 */
export function readFraction(
  values: Float64Array | undefined,
  { minutes, dayFromMs }: Pick<LoggedSpan, 'minutes' | 'dayFromMs'>,
): number {
  let logged = 0;
  let read = 0;
  for (let minute = (dayFromMs - minutes.fromMs) / minuteMs; minute < minutes.count; minute++) {
    if (minutes.steps[minute] === 0) continue;
    logged++;
    if (!Number.isNaN(values?.[minute] ?? Number.NaN)) read++;
  }
  return logged === 0 ? 0 : read / logged;
}
