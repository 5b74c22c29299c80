import type { Channel } from '../../../shared-types/channels.ts';
import { minuteMs } from './minutes.ts';
import type { LoggedSpan } from './span.ts';

/** Less than this share of a day tells nothing of the rest of it; a design choice. */
export const leastCoveredFraction = 0.5;

/** Whether a channel was read in enough of the day to count as measured. */
export function isMeasured(channel: Channel, span: LoggedSpan): boolean {
  return readFraction(span.minutes.values[channel], span) >= leastCoveredFraction;
}

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
