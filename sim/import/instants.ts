import type { TimeFormat } from '../../shared-types/foreign-log.ts';
import { instantsOf, parseWrittenTime, type WrittenTime, type Zone } from '../weather/local-time.ts';

/** What a cell of the time column is. */
export type Instant =
  | { readonly ok: true; readonly atMs: number; readonly repeated: boolean }
  | { readonly ok: false; readonly why: 'not-a-time' | 'skipped-by-clock' | 'far-away' };

const notATime: Instant = { ok: false, why: 'not-a-time' };

/** No logger of such a loop wrote before, and none of today will after: a wrong format does. A design choice. */
const earliestMs = Date.UTC(1980, 0);
const latestMs = Date.UTC(2200, 0);

/**
 * The instant that a cell names. A local time that the clocks repeat is the first instant, or the second once
 * a row before it has reached the first.
 *
 * @param lastMs - Instant of the row before; minus infinity for the first.
 */
export function instantOf(text: string, format: TimeFormat, zone: Zone, lastMs: number): Instant {
  const instant = namedInstant(text, format, zone, lastMs);
  return instant.ok && (instant.atMs < earliestMs || instant.atMs >= latestMs)
    ? { ok: false, why: 'far-away' }
    : instant;
}

function namedInstant(text: string, format: TimeFormat, zone: Zone, lastMs: number): Instant {
  if (format === 'unix-s' || format === 'unix-ms') return unixInstant(text, format === 'unix-s' ? 1000 : 1);
  const written = parseWrittenTime(format === 'iso' ? text : yearFirst(text, format));
  return written === undefined ? notATime : placed(written, zone, lastMs);
}

function unixInstant(text: string, factor: number): Instant {
  if (!/^-?\d+(\.\d+)?$/.test(text)) return notATime;
  return { ok: true, atMs: Math.round(Number(text) * factor), repeated: false };
}

function placed({ clockMs, offsetMs }: WrittenTime, zone: Zone, lastMs: number): Instant {
  if (offsetMs !== undefined) return { ok: true, atMs: clockMs - offsetMs, repeated: false };
  const [first, second] = instantsOf(clockMs, zone);
  if (first === undefined) return { ok: false, why: 'skipped-by-clock' };
  if (second === undefined) return { ok: true, atMs: first, repeated: false };
  return { ok: true, atMs: lastMs >= first ? second : first, repeated: true };
}

const dayFirst = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})[T ]+(\d{1,2}):(\d{2}(?::\d{2}(?:\.\d+)?)?)$/;

/** 21.6.2031 9:05 as 2031-06-21 09:05; anything else as nothing. */
function yearFirst(text: string, format: 'day-month-year' | 'month-day-year'): string {
  const [, one = '', two = '', year = '', hour = '', rest = ''] = dayFirst.exec(text) ?? [];
  const [day, month] = format === 'day-month-year' ? [one, two] : [two, one];
  const pair = (digits: string) => digits.padStart(2, '0');
  return `${year}-${pair(month)}-${pair(day)} ${pair(hour)}:${rest}`;
}
