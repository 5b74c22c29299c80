import type { LogRecord } from '../../../../../shared-types/log.ts';
import { defaultSettings } from '../../../../../shared-types/settings.ts';
import type { Site } from '../../../../../shared-types/site.ts';
import { type LoggedSpan, readSpan, type SpanRead } from '../../../../../sim/identify/world/span.ts';
import { logRecord } from '../../../../support/log-records.ts';
import { memoryLog } from '../../../../support/memory-log.ts';
import { demoContent, siteOf } from '../../../../support/sites.ts';

export const site = siteOf(demoContent({ timeZone: 'Etc/UTC' }));
export const day = '2031-06-21';
export const fromMs = Date.parse(`${day}T00:00:00Z`);
export const minuteMs = 60_000;

type Changes = Parameters<typeof logRecord>[1];

/** Records at the minutes from `first` to before `end`, counted from the day's beginning; those before it are the day before's. */
export function minutely(
  first: number,
  end: number,
  change: (minute: number) => Changes = () => ({}),
): LogRecord[] {
  return Array.from({ length: end - first }, (_, index) => {
    const minute = first + index;
    const changes = change(minute) ?? {};
    const localDay = minute < 0 ? '2031-06-20' : day;
    const input = {
      nowMs: fromMs + (minute + 1) * minuteMs,
      elapsedMs: minuteMs,
      localDay,
      ...changes.input,
    };
    return logRecord(index + 1, { ...changes, input });
  });
}

export function read(records: readonly LogRecord[], own: Site = site): SpanRead {
  return readSpan(memoryLog(records, [], own, defaultSettings), day);
}

export function spanOf(records: readonly LogRecord[], own: Site = site): LoggedSpan {
  const result = read(records, own);
  if (!result.ok) throw new Error(result.why);
  return result.span;
}
