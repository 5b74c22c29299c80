import type { LogReader } from '../../controller/log/log.ts';
import type { LogRecord } from '../../shared-types/log.ts';

/** Local days, both included, or the instants [fromMs, toMs). */
export type Span =
  | { readonly day: string; readonly lastDay: string }
  | { readonly fromMs: number; readonly toMs: number };

/** Records of a span, one after another, without holding them all. */
export function* recordsOfSpan(reader: LogReader, span: Span): IterableIterator<LogRecord> {
  if (!('day' in span)) {
    yield* reader.recordsWithin(span.fromMs, span.toMs);
    return;
  }
  for (const day of daysWithin(reader, span)) yield* reader.records(day);
}

/** One day needs no list of all: a reader that knows no days may still hold it. */
function daysWithin(reader: LogReader, { day, lastDay }: Extract<Span, { day: string }>): string[] {
  if (day === lastDay) return [day];
  const kept = reader.days().map((summary) => summary.day);
  return kept.filter((one) => one >= day && one <= lastDay);
}

/** A span in words. */
export function spanText(span: Span): string {
  if ('day' in span) return span.day === span.lastDay ? span.day : `${span.day} to ${span.lastDay}`;
  const text = (atMs: number) => new Date(atMs).toISOString();
  return `${text(span.fromMs)} to ${text(span.toMs)}`;
}
