import { describe, expect, it } from 'vitest';
import { localDaysOf } from '../../../../controller/log/local-day.ts';

const hourMs = 3_600_000;
/** Zone, day, its length in hours: summer time begins or ends, a midnight that is not there, a day skipped. */
const lengths: [string, string, number][] = [
  ['Etc/UTC', '2031-06-21', 24],
  ['Atlantic/Azores', '2024-03-31', 23],
  ['Atlantic/Azores', '2024-10-27', 25],
  ['Australia/Lord_Howe', '2024-04-07', 24.5],
  ['America/Sao_Paulo', '2018-11-04', 23],
  ['Pacific/Apia', '2011-12-29', 24],
];

describe('local days', () => {
  it.each(lengths)('of %s: %s has %d hours', (zone, day, hours) => {
    const days = localDaysOf(zone);
    const { fromMs, toMs } = days.boundsOf(day);
    expect((toMs - fromMs) / hourMs).toBe(hours);
    expect([days.dayOf(fromMs), days.dayOf(toMs - 1)]).toEqual([day, day]);
    expect(days.dayOf(fromMs - 1) < day).toBe(true);
    expect(days.dayOf(toMs) > day).toBe(true);
  });

  it('are told in digits that sort', () => {
    expect(localDaysOf('Pacific/Kiritimati').dayOf(Date.UTC(2031, 11, 31, 10))).toBe('2032-01-01');
  });

  it('of an unknown zone are a RangeError', () => {
    expect(() => localDaysOf('Atlantic/Atlantis')).toThrow(RangeError);
  });
});
