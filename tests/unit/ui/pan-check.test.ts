import { describe, expect, test } from 'vitest';
import { dayAfter } from '../../../desktop/ui/days/calendar.ts';
import { numberFormats } from '../../../desktop/ui/format/numbers.ts';
import { dayTicks, namesMonths } from '../../../desktop/ui/pan-check/day-ticks.ts';
import { findingSigns, lookOf } from '../../../desktop/ui/pan-check/finding-look.ts';
import { dayTable, groupTable } from '../../../desktop/ui/pan-check/pan-csv.ts';
import type { PanForm } from '../../../desktop/ui/pan-check/pan-form.ts';
import { hoursOf, isReferenceDay } from '../../../desktop/ui/pan-check/pan-groups.ts';
import { dayRows, groupRows } from '../../../desktop/ui/pan-check/pan-rows.ts';
import { firstPanForm, readPanForm } from '../../../desktop/ui/pan-check/read-pan-form.ts';
import { spanText } from '../../../desktop/ui/pan-check/span-text.ts';
import { en } from '../../../desktop/ui/text/en.ts';
import type { DaySummary } from '../../../shared-types/log.ts';
import { panCheckSchema, panFindingCodes } from '../../../shared-types/pan-check.ts';
import { testPanCheck } from '../../support/fake-monitor/pan-check.ts';

const daysFrom = (first: string, count: number) =>
  Array.from({ length: count }, (_, index) => dayAfter(first, index));
const kept = (days: readonly string[]) => days.map((day) => ({ day }) as DaySummary);
const check = testPanCheck(daysFrom('2031-05-12', 40));
const numbers = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en');
const plain = (text: string | null | undefined) => text?.replaceAll('\u00a0', ' ');

test('the made-up check is one that the host could send', () => {
  expect(panCheckSchema.safeParse(check).success).toBe(true);
  expect(panCheckSchema.safeParse(testPanCheck(['2031-06-20'], ['2031-05-01'])).success).toBe(true);
});

describe('the form', () => {
  const { faults } = en.panCheck.form;
  const logged = kept(daysFrom('2031-06-01', 20));
  const today = '2031-06-20';
  const form: PanForm = {
    look: { from: '2031-06-10', to: '2031-06-19' },
    by: 'oldest',
    reference: { from: '2031-06-01', to: '2031-06-05' },
  };

  test('begins at the newest sixty days that are over, and at ten of them to compare with', () => {
    const first = firstPanForm(kept(daysFrom('2031-01-01', 90)), '2031-03-31');
    expect(first).toEqual({
      look: { from: '2031-01-30', to: '2031-03-30' },
      by: 'oldest',
      reference: { from: '2031-01-30', to: '2031-02-08' },
    });
    expect(readPanForm(first, kept(daysFrom('2031-01-01', 90)), '2031-03-31').days).toHaveLength(60);
  });

  test('asks of the days between, and names none to compare with where the oldest are to be', () => {
    expect(readPanForm(form, logged, today)).toEqual({
      days: daysFrom('2031-06-10', 10),
      referenceDays: [],
      fault: null,
    });
    expect(readPanForm({ ...form, by: 'fromTo' }, logged, today).referenceDays).toEqual(
      daysFrom('2031-06-01', 5),
    );
  });

  test.each([
    [{ look: { from: '', to: '2031-06-19' } }, faults.unchosen],
    [{ look: { from: '2031-06-10', to: '' } }, faults.unchosen],
    [{ look: { from: '2031-06-11', to: '2031-06-10' } }, faults.order],
    [{ look: { from: '2031-06-10', to: '2031-06-10' } }, null],
    // The controller still writes today.
    [{ look: { from: '2031-06-20', to: '2031-06-20' } }, faults.none],
    [{ reference: { from: '2030-01-01', to: '2030-01-02' } }, null],
    [{ by: 'fromTo', reference: { from: '2030-01-01', to: '2030-01-02' } }, faults.noReference],
    [{ by: 'fromTo', reference: { from: '2031-06-05', to: '2031-06-01' } }, faults.order],
  ] as const)('with %j says %j', (change, fault) => {
    expect(readPanForm({ ...form, ...change }, logged, today).fault).toBe(fault);
  });

  test('says so when there are more days than the host takes', () => {
    const look = { from: '2029-01-01', to: '2031-12-31' };
    const read = (count: number) =>
      readPanForm({ ...form, look }, kept(daysFrom('2029-01-01', count)), today);
    expect(read(732).fault).toBeNull();
    expect(read(733).fault).toBe(faults.many(732));
  });
});

describe('days along the axis', () => {
  test('are every so many as there is room for', () => {
    expect(dayTicks('2031-06-01', '2031-06-03', 5)).toEqual(daysFrom('2031-06-01', 3));
    expect(dayTicks('2031-06-01', '2031-06-10', 4)).toEqual([
      '2031-06-01',
      '2031-06-04',
      '2031-06-07',
      '2031-06-10',
    ]);
    expect(dayTicks('2031-06-01', '2031-06-10', 1)).toEqual(['2031-06-01']);
  });

  test('are months from the 121st day on', () => {
    const [from, last] = ['2031-01-01', dayAfter('2031-01-01', 119)];
    expect(namesMonths(from, last)).toBe(false);
    expect(dayTicks(from, last, 9)[1]).toBe('2031-01-15');
    expect(namesMonths(from, dayAfter(last, 1))).toBe(true);
    expect(dayTicks(from, dayAfter(last, 1), 9)).toEqual([
      '2031-01-01',
      '2031-02-01',
      '2031-03-01',
      '2031-04-01',
      '2031-05-01',
    ]);
  });

  test('of a long span are months that fit, and a month that has begun is not named', () => {
    expect(dayTicks('2030-05-17', '2031-06-20', 9)).toEqual(
      ['2030-06', '2030-08', '2030-10', '2030-12', '2031-02', '2031-04', '2031-06'].map(
        (month) => `${month}-01`,
      ),
    );
    expect(dayTicks('2030-05-17', '2031-06-20', 3)).toEqual(['2030-06-01', '2030-12-01', '2031-06-01']);
    expect(dayTicks('2031-01-01', '2031-05-01', 5)).toHaveLength(5);
    expect(dayTicks('2029-01-01', '2031-01-01', 1)).toEqual(['2029-01-01', '2030-01-01', '2031-01-01']);
  });
});

describe('the tables', () => {
  test('have the reference first, each value with its band, and say what cannot be told', () => {
    const rows = groupRows(check, numbers);
    expect(rows.map(({ fromDay, count }) => [fromDay, count])).toEqual([
      ['2031-05-12', '8'],
      ['2031-05-20', '8'],
      ['2031-05-28', '8'],
      ['2031-06-05', '8'],
      ['2031-06-13', '8'],
    ]);
    const [first, last] = [rows[0], rows.at(-1)];
    expect(plain(first?.ratio?.value)).toBe('100.0 %');
    expect(first?.ratio?.band).toBeNull();
    expect(plain(last?.ratio?.band)).toMatch(/^8\d\.\d % to 8\d\.\d %$/);
    expect(plain(first?.efficiency?.value)).toBe('0.860');
    expect(plain(first?.loss?.value)).toBe('9.8');
    expect(plain(first?.contact?.value)).toBe('4.3 K');
    expect(groupRows(testPanCheck(daysFrom('2031-05-12', 10)), numbers)[0]?.loss).toBeNull();
  });

  test('hold every day with its heat, on one scale', () => {
    const rows = dayRows(check, numbers);
    expect(rows).toHaveLength(40);
    expect(rows.map(({ reference }) => reference).lastIndexOf(true)).toBe(7);
    const [first] = rows;
    expect(plain(first?.expected)).toBe('14.0 kWh');
    expect(plain(first?.hours)).toBe('4.5 h');
    const ends = rows.flatMap(({ ratio: { bar } }) =>
      bar === null ? [] : [bar.start, bar.start + bar.length],
    );
    expect(Math.min(...ends)).toBe(0);
    expect(Math.max(...ends)).toBeCloseTo(1, 12);
  });

  test('of a single day without a band has no bar', () => {
    const [day] = check.days;
    if (day === undefined) throw new Error('a day is there');
    const sure = { ...day, ratio: { value: 1, low: 1, high: 1 } };
    expect(dayRows({ ...check, days: [sure] }, numbers)[0]?.ratio).toMatchObject({ band: null, bar: null });
  });

  test('are written as files, what cannot be told as empty cells', () => {
    const groups = groupTable(testPanCheck(daysFrom('2031-05-12', 10)));
    expect(groups.every((row) => row.length === 16)).toBe(true);
    expect(groups[0]?.slice(3, 7)).toEqual([
      'Steady flow [h]',
      'Against the reference [1]',
      'Against the reference [1], least',
      'Against the reference [1], most',
    ]);
    expect(groups[1]).toEqual([
      ...['2031-05-12', '2031-05-13', 2, 10.49],
      ...[1, 1, 1, 0.86, 0.845, 0.875],
      ...[null, null, null, 0.0043, 0.0037, 0.0049],
    ]);
    const days = dayTable(check, { temperature: 'C', heat: 'MJ' });
    expect(days).toHaveLength(41);
    expect(days[0]?.slice(3, 5)).toEqual(['Heat [MJ]', 'Expected [MJ]']);
    expect(days[1]).toEqual(['2031-05-12', 'reference', 4.5, 50.4, 50.4, 1, 0.94, 1.06]);
    expect(days[9]?.[1]).toBe('');
  });

  test('know the days of the reference, both ends among them, and how many hours there are', () => {
    const ends = ['2031-05-11', '2031-05-12', '2031-05-19', '2031-05-20'];
    expect(ends.map((day) => isReferenceDay(check, day))).toEqual([false, true, true, false]);
    const { days } = check;
    expect(hoursOf({ days: days.slice(0, 2) })).toBeCloseTo(
      (days[0]?.hours ?? 0) + (days[1]?.hours ?? 0),
      12,
    );
  });
});

describe('the words', () => {
  test('of a span name a single day once', () => {
    const name = (day: string) => day.slice(5);
    expect(spanText('2031-06-01', '2031-06-02', name)).toBe('06-01 to 06-02');
    expect(spanText('2031-06-01', '2031-06-01', name)).toBe('06-01');
  });

  test('say how many days were asked for and how many were of use', () => {
    const { chosen } = en.panCheck.form;
    expect(chosen(1, null)).toBe('1 day, compared with the oldest of them.');
    expect(chosen(8, 3)).toBe('8 days, compared with 3 days.');
    const { usable } = en.panCheck.found;
    expect(usable(8, 8, '40 h')).toContain('Of 8 days looked at, all could be used');
    expect(usable(7, 8, '40 h')).toContain('Of 8 days looked at, 7 could be used');
  });

  test.each(panFindingCodes)('and the look of %s are there', (code) => {
    expect(en.panCheck.found.titles[code]).not.toBe('');
    expect(findingSigns[lookOf({ code })]).toHaveLength(1);
  });

  test('of what is worse alone stand out', () => {
    expect(panFindingCodes.filter((code) => lookOf({ code }) === 'worse')).toEqual([
      'gathers-less',
      'loses-more',
      'contact-poorer',
      'shaded',
    ]);
    expect(lookOf({ code: 'as-good' })).toBe('calm');
  });
});
