import { instantsOf, parseWrittenTime, zoneOf } from '../weather/local-time.ts';
import type { Span } from './span.ts';

export type SpanRead =
  | { readonly ok: true; readonly span: Span }
  | { readonly ok: false; readonly why: string };

interface Kept {
  /** Local days that the log holds, in order. */
  readonly days: readonly string[];
  /** Zone in which an instant without an offset is meant. */
  readonly timeZone: string;
}

const dayPattern = /^\d{4}-\d{2}-\d{2}$/;

/**
 * Reads a span as people write it: `latest`, a day, `DAY..DAY` with both days, or `INSTANT..INSTANT` up to the
 * second one, such as `2031-06-21T09:00..2031-06-21T12:30`. Refuses, with words, what the log does not hold.
 */
export function readSpanText(text: string, kept: Kept): SpanRead {
  const latest = kept.days.at(-1);
  if (latest === undefined) return refused('the log holds no day');
  if (text === 'latest') return daySpan(latest, latest, kept);
  const [from = '', to = from, ...more] = text.split('..');
  if (more.length > 0 || from === '' || to === '')
    return refused(`'${text}' is no span: write a day, or FROM..TO`);
  if (dayPattern.test(from) && dayPattern.test(to)) return daySpan(from, to, kept);
  const fromMs = instantOf(from, kept.timeZone, 0);
  const toMs = instantOf(to, kept.timeZone, -1);
  if (fromMs === undefined || toMs === undefined || !text.includes('..')) return nothing(text, kept);
  if (fromMs >= toMs) return refused(`the span '${text}' ends before it begins`);
  return { ok: true, span: { fromMs, toMs } };
}

const refused = (why: string): SpanRead => ({ ok: false, why });

function daySpan(day: string, lastDay: string, kept: Kept): SpanRead {
  if (day > lastDay) return refused(`the span '${day}..${lastDay}' ends before it begins`);
  if (!kept.days.some((one) => one >= day && one <= lastDay))
    return nothing(day === lastDay ? day : `${day}..${lastDay}`, kept);
  return { ok: true, span: { day, lastDay } };
}

/** So many days are named; of more, the first and the last. */
const mostNamed = 12;

function nothing(text: string, { days }: Kept): SpanRead {
  const there =
    days.length <= mostNamed ? days.join(', ') : `${days.length} days from ${days[0]} to ${days.at(-1)}`;
  return refused(`nothing of '${text}' is kept; there are: ${there}`);
}

/** @param which - Of an hour that the clocks show twice: 0 the first time, -1 the last. */
function instantOf(text: string, timeZone: string, which: 0 | -1): number | undefined {
  const written = parseWrittenTime(text);
  if (written === undefined) return undefined;
  const { clockMs, offsetMs } = written;
  if (offsetMs !== undefined) return clockMs - offsetMs;
  const zone = zoneOf(timeZone);
  return zone === undefined ? undefined : instantsOf(clockMs, zone).at(which);
}
