import { describe, expect, it } from 'vitest';
import type { LogReader } from '../../../../../controller/log/log.ts';
import type { LogRecord } from '../../../../../shared-types/log.ts';
import { defaultSettings } from '../../../../../shared-types/settings.ts';
import { logMarkOf } from '../../../../../sim/replay/sweep/log-mark.ts';
import { logRecord } from '../../../../support/log-records.ts';
import { memoryLog } from '../../../../support/memory-log.ts';
import { demoContent, siteOf } from '../../../../support/sites.ts';

const site = siteOf(demoContent({}));
const days = ['2031-06-19', '2031-06-20', '2031-06-21', '2031-06-22'];
const startsOf = (day: string) => Date.parse(`${day}T00:00:00Z`);

/** Ten steps of each day, and more of one. */
function logOf(longer?: string, change: (record: LogRecord) => LogRecord = (record) => record): LogReader {
  const records = days.flatMap((localDay) =>
    Array.from({ length: localDay === longer ? 11 : 10 }, (_, step) =>
      change(logRecord(step + 1, { input: { localDay, nowMs: startsOf(localDay) + step * 10_000 } })),
    ),
  );
  return memoryLog(records, [], site, defaultSettings);
}

const taken = (reader: LogReader): LogReader => ({
  ...reader,
  days: () => reader.days().map((summary) => ({ ...summary, imported: true })),
});

describe('what tells the log of the days of a sweep', () => {
  it('is the same for the same log', () => {
    expect(logMarkOf(logOf(), ['2031-06-21'])).toBe(logMarkOf(logOf(), ['2031-06-21']));
  });

  it.each([
    ['2031-06-19', false],
    ['2031-06-20', true],
    ['2031-06-21', true],
    ['2031-06-22', false],
  ])('changes with the day itself and the day before: where %s grows, %s', (longer, changes) => {
    expect(logMarkOf(logOf(longer), ['2031-06-21']) !== logMarkOf(logOf(), ['2031-06-21'])).toBe(changes);
  });

  it('changes where another logger says otherwise of as many steps', () => {
    const warmer = (record: LogRecord): LogRecord => ({
      ...record,
      input: { ...record.input, readings: { ambientC: { value: 30, ageMs: 0 } } },
    });
    const [before, after] = [taken(logOf()), taken(logOf(undefined, warmer))];
    expect(after.days()).toEqual(before.days());
    expect(logMarkOf(after, ['2031-06-21'])).not.toBe(logMarkOf(before, ['2031-06-21']));
  });
});
