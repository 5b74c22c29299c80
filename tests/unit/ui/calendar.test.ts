import { describe, expect, test } from 'vitest';
import { calendarMonth, dayAfter, monthAfter, newestComplete } from '../../../desktop/ui/days/calendar.ts';
import { daySummary as summary } from '../../support/samples.ts';

describe('a month', () => {
  test('of 30 days that begins on a Sunday takes six weeks', () => {
    const { weeks } = calendarMonth('2031-06', []);
    expect(weeks).toHaveLength(6);
    expect(weeks[0]?.map((cell) => cell?.dayOfMonth)).toEqual([...Array(6).fill(undefined), 1]);
    expect(weeks.flat().filter((cell) => cell !== null)).toHaveLength(30);
    for (const week of weeks) expect(week).toHaveLength(7);
  });
  test('of February that begins on a Monday takes four weeks', () => {
    expect(calendarMonth('2027-02', []).weeks).toHaveLength(4);
  });
  test('knows leap years', () => {
    const days = (month: string) =>
      calendarMonth(month, [])
        .weeks.flat()
        .filter((cell) => cell !== null);
    expect(days('2028-02')).toHaveLength(29);
    expect(days('2100-02')).toHaveLength(28);
  });
  test('adds up what was logged in it, and measures bars by the best day of all', () => {
    const month = calendarMonth('2031-06', [
      summary('2031-05-31', { heatHomeJ: 1e8 }),
      summary('2031-06-01', { heatHomeJ: 5e7 }),
      summary('2031-06-02', { heatHomeJ: -1e6 }),
    ]);
    expect(month.heatHomeJ).toBe(4.9e7);
    expect(month.loggedDays).toBe(2);
    const bars = month.weeks.flat().map((cell) => cell?.bar);
    expect(bars[6]).toBe(0.5);
    expect(bars[7]).toBe(0);
  });
});

describe('a day without a log', () => {
  const month = calendarMonth('2031-06', [summary('2031-06-10'), summary('2031-06-13')]);
  const missing = month.weeks.flat().flatMap((cell) => (cell?.missing ? [cell.dayOfMonth] : []));
  test('is missing only between logged days', () => {
    expect(missing).toEqual([11, 12]);
  });
});

describe('steps through the calendar', () => {
  test('cross years and months', () => {
    expect(monthAfter('2031-12', 1)).toBe('2032-01');
    expect(monthAfter('2031-01', -1)).toBe('2030-12');
    expect(dayAfter('2031-02-28', 1)).toBe('2031-03-01');
    expect(dayAfter('2031-01-01', -1)).toBe('2030-12-31');
  });
});

describe('the day that a replay offers first', () => {
  const days = [
    summary('2031-06-18'),
    summary('2031-06-20', { coveredFraction: 0.4 }),
    summary('2031-06-19'),
    summary('2031-06-21', { coveredFraction: 0.99 }),
  ];
  test('is the newest complete one that is over', () => {
    expect(newestComplete(days, '2031-06-21')).toBe('2031-06-19');
    expect(newestComplete(days, '2031-06-22')).toBe('2031-06-21');
  });
  test('is the newest that is over when none is complete', () => {
    const torn = days.map((day) => ({ ...day, coveredFraction: 0.5 }));
    expect(newestComplete(torn, '2031-06-21')).toBe('2031-06-20');
  });
  test('is today when there is nothing else', () => {
    expect(newestComplete([summary('2031-06-21')], '2031-06-21')).toBe('2031-06-21');
    expect(newestComplete([], '2031-06-21')).toBeUndefined();
  });
});
