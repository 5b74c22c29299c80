import { describe, expect, test } from 'vitest';
import { defaultSettings } from '../../../../../shared-types/settings.ts';
import { readSpan } from '../../../../../sim/identify/world/span.ts';
import { logRecord } from '../../../../support/log-records.ts';
import { memoryLog } from '../../../../support/memory-log.ts';
import { demoContent, siteOf } from '../../../../support/sites.ts';
import { day, minutely, minuteMs, read, spanOf } from './span-rig.ts';

describe('a logged day', () => {
  test('that is whole needs no remark', () => {
    const span = spanOf(minutely(0, 1440));
    expect(span.remarks).toEqual([]);
    expect(span.coveredFraction).toBe(1);
    expect(span.minutes.count).toBe(1440);
    expect(span.dayToMs - span.dayFromMs).toBe(1440 * minuteMs);
  });

  test('of which nothing is kept is refused', () => {
    expect(read([])).toEqual({ ok: false, why: `nothing of ${day} is kept` });
  });

  test('is refused below half of it, and taken from half on', () => {
    expect(read(minutely(0, 719))).toMatchObject({
      ok: false,
      why: expect.stringContaining('50 % is the least'),
    });
    expect(read(minutely(0, 720)).ok).toBe(true);
  });

  test('of another logger whose steps lie far apart is refused with how far', () => {
    const every = (minutes: number) => read(minutely(0, 1440).filter((_, minute) => minute % minutes === 0));
    expect(every(5)).toMatchObject({ why: expect.stringContaining('its steps lie 5.0 minutes apart') });
    expect(read(minutely(0, 700))).not.toMatchObject({ why: expect.stringContaining('apart') });
  });

  test('that the log does not hold to both ends says so, and from where it is taken on trust', () => {
    expect(spanOf(minutely(2, 1438)).remarks).toEqual([
      expect.stringContaining('The log begins 3 minutes into the day'),
    ]);
    expect(spanOf(minutely(0, 1437)).remarks).toEqual([
      expect.stringContaining('The log ends 3 minutes before the day does'),
    ]);
    expect(spanOf(minutely(1, 1438)).remarks).toEqual([]);
  });

  test('says which sensor was read in a part of it only', () => {
    const until = (end: number) =>
      minutely(0, 1440, (minute) => (minute < end ? {} : { outcome: { failed: ['panOutletC' as const] } }));
    expect(spanOf(until(1295)).remarks).toEqual(['Pan outlet: read in 90 % of what was logged of the day.']);
    expect(spanOf(until(1296)).remarks).toEqual([]);
  });

  test('loses steps that are not later than the one before, and says how many', () => {
    const records = minutely(0, 1440);
    const twice = [...records.slice(0, 700), ...records.slice(690, 1440)];
    const span = spanOf(twice);
    expect(span.remarks).toEqual(['10 steps that were not later than the one before them are left out.']);
    expect(span.minutes.steps.every((steps) => steps === 1)).toBe(true);
  });

  test('says where the clock jumped', () => {
    const records = minutely(0, 1440, (minute) => (minute === 600 ? { input: { elapsedMs: 20_000 } } : {}));
    expect(spanOf(records).remarks).toEqual([expect.stringContaining('The calendar clock jumped 1 times')]);
  });

  test('has the pump off and the drain open where nothing was logged', () => {
    const records = minutely(0, 1440).filter((_, minute) => minute < 600 || minute >= 630);
    const span = spanOf(records);
    expect(span.remarks).toEqual([expect.stringContaining('1 gaps, 31 minutes in sum')]);
    expect(span.minutes.drives[615]?.[0]?.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    expect(span.minutes.drives[599]?.[0]?.outputs).toMatchObject({ pumpFraction: 1, drainOpen: false });
  });

  /** Two hours before noon the controller falls silent until a minute, with or without knowing for how long. */
  const silentUntil = (end: number, outputExpiryS: number, elapsedMs: number | null, phase?: 'unknown') => {
    const records = minutely(0, 1440, (minute) => ({
      input: { feedback: null, ...(minute === end ? { elapsedMs } : {}) },
      ...(phase === undefined ? {} : { outcome: { phase } }),
    }));
    const own = siteOf(demoContent({ timeZone: 'Etc/UTC', control: { stepS: 2, outputExpiryS } }));
    const span = spanOf(
      records.filter((_, minute) => minute < 600 || minute >= end),
      own,
    );
    return {
      ranS: [599, 600, 601, 602, 603, 604, 605].map((minute) =>
        (span.minutes.drives[minute] ?? [])
          .filter(({ outputs }) => outputs.pumpFraction === 1 && !outputs.drainOpen)
          .reduce((sum, { dtS }) => sum + dtS, 0),
      ),
      remarks: span.remarks,
    };
  };

  test('has the outputs of the last step until they expired, and safe ones after it', () => {
    const told = (where: string) => expect.stringContaining(where);
    const gap = silentUntil(604, 90, 300_000);
    expect(gap.ranS).toEqual([60, 60, 30, 0, 0, 0, 60]);
    expect(gap.remarks).toEqual([
      told('1 gaps, 5 minutes in sum: pump off and drain open are assumed in them, from'),
    ]);
    expect(silentUntil(604, 300, 300_000).ranS).toEqual([60, 60, 60, 60, 60, 60, 60]);
    expect(silentUntil(604, 299, 300_000).ranS).toEqual([60, 60, 60, 60, 60, 59, 60]);
    // Shorter than a gap that is told, and still longer than the outputs are held.
    expect(silentUntil(601, 90, 120_000)).toEqual({ ranS: [60, 60, 30, 60, 60, 60, 60], remarks: [] });
    expect(silentUntil(601, 90, null)).toEqual({ ranS: [60, 60, 30, 60, 60, 60, 60], remarks: [] });
  });

  test('takes a calendar clock that jumped for no silence, up to a gap', () => {
    const { ranS, remarks } = silentUntil(601, 90, 60_000);
    expect(ranS).toEqual([60, 60, 60, 60, 60, 60, 60]);
    expect(remarks).toEqual([expect.stringContaining('The calendar clock jumped 1 times')]);
  });

  test('of another logger is judged by the gap alone', () => {
    const { ranS, remarks } = silentUntil(604, 300, 300_000, 'unknown');
    expect(ranS).toEqual([60, 0, 0, 0, 0, 0, 60]);
    expect(remarks[0]).toMatch(/drain open are assumed in them\.$/);
    expect(silentUntil(601, 10, 120_000, 'unknown').ranS).toEqual([60, 60, 60, 60, 60, 60, 60]);
  });

  test('leaves out what a failed sensor said from when it failed', () => {
    const records = minutely(0, 1440, (minute) =>
      minute < 800 ? {} : { outcome: { failed: ['panOutletC' as const] } },
    );
    const { values } = spanOf(records).minutes;
    expect(values.panOutletC?.[799]).toBeCloseTo(140, 0);
    expect(values.panOutletC?.[800]).toBeNaN();
    expect(values.storeBottomC?.[800]).toBe(30.5);
  });

  test('does what the device says, not what it was asked', () => {
    const stopped = { pumpFraction: 0, drainOpen: null, ageMs: 100 };
    const span = spanOf(minutely(0, 1440, () => ({ input: { feedback: stopped } })));
    expect(span.minutes.drives[700]?.[0]?.outputs).toMatchObject({ pumpFraction: 0, drainOpen: false });
  });

  test('of 23 hours and of 25 hours is as long as that', () => {
    const lisbon = siteOf(demoContent({ timeZone: 'Europe/Lisbon' }));
    for (const [name, hours] of [
      ['2031-03-30', 23],
      ['2031-10-26', 25],
    ] as const) {
      const beginMs = Date.parse(`${name}T00:00:00Z`) - (hours === 25 ? 3_600_000 : 0);
      const records = Array.from({ length: hours * 60 }, (_, minute) =>
        logRecord(minute + 1, {
          input: { nowMs: beginMs + (minute + 1) * minuteMs, elapsedMs: minuteMs, localDay: name },
        }),
      );
      const result = readSpan(memoryLog(records, [], lisbon, defaultSettings), name);
      expect(result).toMatchObject({
        ok: true,
        span: { minutes: { count: hours * 60 }, coveredFraction: 1 },
      });
    }
  });
});
