import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daysBetween, newestDays, wholeNumber } from '../../../desktop/ui/replay/chosen-days.ts';
import { axisTicks } from '../../../desktop/ui/replay/many/axis-ticks.ts';
import { droppedEdits } from '../../../desktop/ui/replay/many/dropped-edits.ts';
import { combinations, newRange, readRange } from '../../../desktop/ui/replay/many/range-draft.ts';
import { readSweep } from '../../../desktop/ui/replay/many/read-sweep.ts';
import { roundBelow } from '../../../desktop/ui/replay/many/round-step.ts';
import { sweepTable } from '../../../desktop/ui/replay/many/sweep-csv.ts';
import {
  advisedIndex,
  markByKey,
  plotted,
  roomFor,
  tableOrder,
} from '../../../desktop/ui/replay/many/trade-off.ts';
import type { DaySummary } from '../../../shared-types/log.ts';
import { defaultSettings, settingDeclarations, settingNames } from '../../../shared-types/settings.ts';
import { settingRangeSchema, sweepReportSchema } from '../../../shared-types/tuning.ts';
import { testSweep } from '../../support/fake-monitor/tuning.ts';

const logged = ['2031-06-19', '2031-06-21', '2031-06-18', '2031-06-20'].map((day) => ({ day }) as DaySummary);
const today = '2031-06-21';
const report = testSweep(['2031-06-19', '2031-06-20']);
const draft = { setting: 'startDifferenceK', from: '1', to: '5', values: '5' } as const;

test('the made-up sweep is one that the host could send', () => {
  expect(sweepReportSchema.safeParse(report).success).toBe(true);
});

describe('the days', () => {
  test('the newest are those that are over, the oldest first', () => {
    expect(newestDays(logged, today, 2)).toEqual(['2031-06-19', '2031-06-20']);
    // A clock that was set back leaves days after today.
    expect(newestDays(logged, '2031-06-20', 2)).toEqual(['2031-06-19', '2031-06-21']);
    expect(newestDays(logged, undefined, 1)).toEqual(['2031-06-21']);
    expect(newestDays(logged, today, 9)).toHaveLength(3);
    expect(newestDays(logged, today, 0)).toEqual([]);
  });
  test('those from one to another include both ends, but not today', () => {
    expect(daysBetween(logged, today, '2031-06-19', '2031-06-21')).toEqual(['2031-06-19', '2031-06-20']);
    expect(daysBetween(logged, today, '2031-06-20', '2031-06-19')).toEqual([]);
  });
  test.each([
    ['7', 7],
    [' 12 ', 12],
    ['0', null],
    ['-1', null],
    ['1.5', null],
    ['', null],
    ['99999', null],
  ])('a typed %j is %j', (typed, number) => {
    expect(wholeNumber(typed)).toBe(number);
  });
});

describe('a range', () => {
  test('is read in the units of the screen', () => {
    expect(readRange(draft, 'C')).toEqual({
      range: { setting: 'startDifferenceK', from: 1, to: 5, values: 5 },
      faults: {},
    });
    expect(readRange({ ...draft, from: '1.8', to: '9' }, 'F').range).toMatchObject({ from: 1, to: 5 });
  });

  test.each([
    [{ from: 'x' }, { from: 'Write a number.' }],
    [{ to: '' }, { to: 'Write a number.' }],
    [{ from: '0.9' }, { from: expect.stringContaining('Allowed from 1 to 30') }],
    [{ to: '30.1' }, { to: expect.stringContaining('Allowed from 1 to 30') }],
    [{ values: '51' }, { values: 'Between 1 and 50 values.' }],
    [{ values: '0' }, { values: 'Between 1 and 50 values.' }],
    [{ from: '6' }, { from: 'From is greater than to.' }],
    [{ values: '1' }, { values: expect.stringContaining('One value') }],
    [{ from: '5' }, { values: expect.stringContaining('One value') }],
    [
      { from: 'x', values: 'y' },
      { from: 'Write a number.', values: 'Between 1 and 50 values.' },
    ],
  ])('with %j says what is wrong with which part', (change, faults) => {
    expect(readRange({ ...draft, ...change }, 'C')).toEqual({ range: null, faults });
  });

  test.each([{ from: '5', values: '1' }, { values: '50' }, { from: '1', to: '30' }])(
    'with %j is allowed',
    (change) => {
      expect(readRange({ ...draft, ...change }, 'C').range).not.toBeNull();
    },
  );

  test.each(['C', 'F'] as const)(
    'that is new is allowed for every setpoint, in degrees %s',
    (temperature) => {
      for (const name of settingNames) {
        const inForce = { ...defaultSettings, [name]: settingDeclarations[name].least };
        for (const settings of [defaultSettings, inForce]) {
          const { range, faults } = readRange(newRange(name, settings, temperature), temperature);
          expect(faults).toEqual({});
          expect(settingRangeSchema.safeParse(range).success).toBe(true);
        }
      }
    },
  );

  test('that is new lies around the value in force; of a switch it is both ways', () => {
    expect(newRange('emptyAfterMin', defaultSettings, 'C')).toMatchObject({ from: '50', to: '130' });
    const at = (storeLimitC: number) => newRange('storeLimitC', { ...defaultSettings, storeLimitC }, 'C');
    // Near either end of what is allowed, 25 to 95 °C, it leans to the other side.
    const ranges = [60, 26, 25, 29, 94].map((limit) => [at(limit).from, at(limit).to]);
    expect(ranges).toEqual([
      ['56', '64'],
      ['26', '34'],
      ['25', '33'],
      ['25', '33'],
      ['86', '94'],
    ]);
    expect(newRange('storeLimitC', defaultSettings, 'F')).toMatchObject({ from: '130', to: '150' });
    expect(newRange('batchRunning', defaultSettings, 'C')).toEqual({
      setting: 'batchRunning',
      from: '0',
      to: '1',
      values: '2',
    });
  });

  test('combines with others to their product', () => {
    const range = (values: number) => ({ setting: 'startDelayS', from: 0, to: 9, values }) as const;
    expect(combinations([range(5), range(3), range(2)])).toBe(30);
    expect(combinations([])).toBe(1);
  });
});

describe('the form of a sweep', () => {
  const form = { ranges: [draft], by: 'newest', count: '2', from: '', to: '' } as const;
  const read = (change: object) => readSweep({ ...form, ...change }, logged, today, 'C');

  test('that is whole is ready', () => {
    expect(read({})).toMatchObject({ ready: true, fault: null, countFault: null });
    expect(read({ by: 'fromTo', from: '2031-06-18', to: '2031-06-19', count: 'x' })).toMatchObject({
      ready: true,
      days: ['2031-06-18', '2031-06-19'],
    });
  });

  test.each([
    [{ count: 'x' }, { countFault: 'Write a number.', fault: null }],
    [{ by: 'fromTo', from: '2030-01-01', to: '2030-01-02' }, { fault: 'No day was logged there.' }],
    [{ ranges: [draft, draft] }, { fault: 'The same setpoint stands here twice.' }],
    [{ ranges: [{ ...draft, to: 'x' }] }, { fault: null, ranges: [] }],
  ])('with %j is not', (change, said) => {
    expect(read(change)).toMatchObject({ ready: false, ...said });
  });
});

describe('the trade-off', () => {
  const scales = { heat: (valueJ: number) => valueJ / 3.6e6, cost: (value: number) => value };

  test('goes from the least cost on, with heat as more than now', () => {
    const marks = plotted(report.points, 'starts', scales);
    expect(marks.map(({ x }) => x)).toEqual([20, 21, 22, 23, 24, 26, 30]);
    expect(marks[2]).toMatchObject({ index: 2, y: 2.5, low: expect.closeTo(1.3), high: expect.closeTo(3.7) });
  });

  test('of equal cost the one with less heat comes first, then the earlier one', () => {
    const marks = plotted(report.points, 'fills', scales);
    expect(marks.map(({ index }) => index)).toEqual([6, 5, 4, 0, 3, 2, 1]);
    const alike = [report.points[1], report.points[1]].flatMap((point) => point ?? []);
    expect(plotted(alike, 'fills', scales).map(({ index }) => index)).toEqual([0, 1]);
  });

  test('leaves room around the marks, also around a single one', () => {
    expect(roomFor([0, 100])).toEqual([-8, 108]);
    expect(roomFor([5])).toEqual([4, 6]);
  });

  test.each([
    [0, 'ArrowRight', 1],
    [6, 'ArrowRight', 6],
    [3, 'ArrowUp', 4],
    [3, 'ArrowLeft', 2],
    [0, 'ArrowDown', 0],
    [3, 'Home', 0],
    [3, 'End', 6],
    [3, 'a', undefined],
  ])('from mark %d the key %s leads to %j', (place, key, next) => {
    expect(markByKey(place, 7, key)).toBe(next);
  });

  test('as a table has the settings in force on top, then the most heat first', () => {
    expect(tableOrder(report.points, true)).toEqual([0, 1, 2, 4]);
    expect(tableOrder(report.points, false)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    const turned = [...report.points].reverse();
    expect(tableOrder(turned, false)).toEqual([0, 5, 4, 3, 6, 2, 1]);
  });

  test.each([
    [2, 2],
    [0, null],
    [7, null],
    [-1, null],
  ])('advice for point %d marks %j', (point, index) => {
    expect(advisedIndex({ ...report, advice: { point, text: '' } })).toBe(index);
  });

  test('says how many changes of the form it would drop', () => {
    expect(droppedEdits(['startDifferenceK', 'storeLimitC'], { startDifferenceK: 2 })).toBe(1);
    expect(droppedEdits([], { startDifferenceK: 2 })).toBe(0);
  });

  test('is written as a table with the varied setpoints in front', () => {
    const table = sweepTable(report, { temperature: 'F', heat: 'kWh' });
    expect(table[0]?.slice(0, 5)).toEqual([
      'Start difference [K]',
      'More than now [kWh]',
      'More than now, least [kWh]',
      'More than now, most [kWh]',
      'Heat home [kWh]',
    ]);
    expect(table.every((row) => row.length === 12)).toBe(true);
    expect(table[1]).toEqual([1, 0, 0, 0, 150, 30, 9, 1.5, 6.1, null, 0, '']);
    expect(table[0]?.at(-2)).toBe('Beyond the log [h]');
    expect(table[2]?.at(-2)).toBe(1.5);
    expect(table[2]?.slice(0, 4)).toEqual([2, 4, 2.8, 5.2]);
    expect(table[2]?.at(-1)).toBe('on the front');
  });
});

describe('ticks of an axis', () => {
  test('are round, rising, within the span, and not more than asked for', () => {
    const span = fc.tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 1, max: 99_999 }));
    fc.assert(
      fc.property(span, fc.integer({ min: 2, max: 12 }), ([from, wide], count) => {
        const [least, most] = [from / 10, (from + wide) / 10];
        const ticks = axisTicks(least, most, count);
        expect(ticks.length).toBeLessThanOrEqual(count);
        for (const [index, tick] of ticks.entries()) {
          expect(tick).toBeGreaterThanOrEqual(least - 1e-6);
          expect(tick).toBeLessThanOrEqual(most + 1e-6);
          if (index > 0) expect(tick).toBeGreaterThan(ticks[index - 1] as number);
        }
      }),
    );
  });
  test('stand at fifths, halves and tenths', () => {
    expect(axisTicks(0, 10, 6)).toEqual([0, 2, 4, 6, 8, 10]);
    expect(axisTicks(-0.3, 0.3, 7)).toEqual([-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3]);
    expect(axisTicks(19, 31, 4)).toEqual([20, 25, 30]);
    expect(axisTicks(5, 5, 4)).toEqual([5]);
    expect(axisTicks(14.8, 17.2, 9)).toContain(15.5);
    expect(axisTicks(14.8, 17.2, 9, 1)).toEqual([15, 16, 17]);
    expect(axisTicks(0, 10, 6, 1)).toEqual([0, 2, 4, 6, 8, 10]);
  });
});

test.each([
  [1, 1],
  [1.99, 1],
  [2, 2],
  [4.99, 2],
  [5, 5],
  [9.99, 5],
  [10, 10],
  [29.75, 20],
  [0.1, 0.1],
  [0.045, 0.02],
  [1000, 1000],
])('the round step below %d is %d', (value, step) => {
  expect(roundBelow(value)).toBeCloseTo(step, 9);
});
