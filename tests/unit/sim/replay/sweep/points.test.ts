import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../../../../shared-types/settings.ts';
import type { SettingRange } from '../../../../../shared-types/tuning.ts';
import { halton, mostDirections, shifted } from '../../../../../sim/replay/sweep/halton.ts';
import { mostPoints, pointsOf, valuesOf } from '../../../../../sim/replay/sweep/points.ts';
import { readRanges } from '../../../../../sim/replay/sweep/ranges.ts';

const range = (setting: SettingRange['setting'], from: number, to: number, values: number): SettingRange => ({
  setting,
  from,
  to,
  values,
});
const start = range('startDifferenceK', 2, 6, 3);

describe('points of a sweep', () => {
  it('are the whole grid, the settings in force first and the last range fastest', () => {
    const { points, refused, remarks } = pointsOf([start, range('fillsPerDay', 2, 4, 2)], defaultSettings, 1);
    expect(points.map(({ change }) => change)).toEqual([
      {},
      { startDifferenceK: 2, fillsPerDay: 2 },
      // Four fills are in force: nothing changes there.
      { startDifferenceK: 2 },
      { startDifferenceK: 4, fillsPerDay: 2 },
      { startDifferenceK: 4 },
      { startDifferenceK: 6, fillsPerDay: 2 },
      { startDifferenceK: 6 },
    ]);
    expect(points[0]?.settings).toEqual(defaultSettings);
    expect(points[1]?.settings).toEqual({ ...defaultSettings, startDifferenceK: 2, fillsPerDay: 2 });
    expect(refused).toEqual([]);
    expect(remarks).toEqual([]);
  });

  it('do not name the settings in force twice', () => {
    const { points } = pointsOf([range('startDifferenceK', 1, 3, 3)], defaultSettings, 1);
    expect(points.map(({ change }) => change)).toEqual([
      {},
      { startDifferenceK: 2 },
      { startDifferenceK: 3 },
    ]);
  });

  it('may be a single value', () => {
    const { points } = pointsOf([range('startDifferenceK', 4, 4, 1)], defaultSettings, 1);
    expect(points.map(({ change }) => change)).toEqual([{}, { startDifferenceK: 4 }]);
  });

  it('leave out what the table of settings refuses, with its words', () => {
    const { points, refused } = pointsOf([range('stopDifferenceK', 0.5, 5, 2)], defaultSettings, 1);
    expect(points.map(({ change }) => change)).toEqual([{}, { stopDifferenceK: 0.5 }]);
    expect(refused).toEqual([
      {
        change: { stopDifferenceK: 5 },
        why: 'The stop difference is at least 0.5 K below the start difference.',
      },
    ]);
  });

  it('tell a value that lies outside its bounds', () => {
    const { refused } = pointsOf([range('fillsPerDay', 0, 2, 2)], defaultSettings, 1);
    expect(refused[0]?.why).toContain('fillsPerDay');
  });

  it.each([
    [[], 'one range or more'],
    [[start, start], 'startDifferenceK is given twice'],
    [[range('startDifferenceK', 6, 2, 3)], 'from 6 down to 2'],
    [[range('startDifferenceK', 31, 40, 3)], 'lies between 1 and 30 K'],
    [[range('startDifferenceK', -3, 0.5, 3)], 'lies between 1 and 30 K'],
  ])('refuse ranges that cannot be meant: %j', (ranges, words) => {
    expect(() => pointsOf(ranges, defaultSettings, 1)).toThrow(words);
  });

  it('are taken as far as a range touches the bounds', () => {
    expect(pointsOf([range('startDifferenceK', 30, 40, 2)], defaultSettings, 1).points).toHaveLength(2);
    expect(pointsOf([range('startDifferenceK', 0, 1, 2)], defaultSettings, 1).points).toHaveLength(1);
  });

  const many = [range('startDifferenceK', 2, 21, 20), range('startDelayS', 0, 1800, 20)];
  it('are all tried up to a number', () => {
    const { points, remarks } = pointsOf(many, defaultSettings, 1);
    expect(points).toHaveLength(mostPoints + 1);
    expect(remarks).toEqual([]);
  });

  const more = [range('startDifferenceK', 2, 22, 21), range('startDelayS', 0, 1800, 20)];
  it('are a seeded sample of the grid beyond that number, none twice', () => {
    const { points, remarks } = pointsOf(more, defaultSettings, 1);
    const texts = points.map(({ change }) => JSON.stringify(change));
    expect(new Set(texts).size).toBe(texts.length);
    expect(points.length).toBeGreaterThan(mostPoints - 25);
    expect(remarks[0]).toMatch(/span 420 sets of settings; 400 of them/);
    expect(pointsOf(more, defaultSettings, 1).points).toEqual(points);
    expect(pointsOf(more, defaultSettings, 2).points).not.toEqual(points);
  });

  it('cover a large grid evenly', () => {
    const wide = [range('startDifferenceK', 1, 30, 50), range('startDelayS', 0, 1800, 50)];
    const { points } = pointsOf(wide, defaultSettings, 3);
    for (const [low, high] of [
      [1, 15.5],
      [15.5, 31],
    ] as const)
      for (const late of [0, 900]) {
        const inside = points.filter(
          ({ settings: { startDifferenceK, startDelayS } }) =>
            startDifferenceK >= low &&
            startDifferenceK < high &&
            startDelayS >= late &&
            startDelayS < late + 901,
        );
        // A quarter of the sample each; a plain draw would stray by 9.
        expect(Math.abs(inside.length - mostPoints / 4)).toBeLessThan(9);
      }
  });
});

describe('values of a range', () => {
  it('have both ends and even steps', () => {
    expect(valuesOf(range('stopDifferenceK', 0.1, 0.5, 5))).toEqual([0.1, 0.2, 0.3, 0.4, 0.5]);
    expect(valuesOf(range('startDifferenceK', 4, 4, 1))).toEqual([4]);
    expect(valuesOf(range('startDifferenceK', 4, 4, 3))).toEqual([4]);
  });
});

describe('the sequence of Halton', () => {
  it('mirrors digits behind the point', () => {
    expect([1, 2, 3, 4].map((index) => halton(index, 0))).toEqual([0.5, 0.25, 0.75, 0.125]);
    expect([1, 2, 3, 4].map((index) => Math.round(9 * halton(index, 1)))).toEqual([3, 6, 1, 4]);
    expect(mostDirections).toBe(20);
  });

  it('is shifted within the cube', () => {
    expect(shifted(0.25, 0.5)).toBe(0.75);
    expect(shifted(0.5, 0.5)).toBe(0);
    expect(shifted(0.75, 0.5)).toBe(0.25);
  });
});

describe('ranges as they are written', () => {
  it('are read', () => {
    expect(readRanges(['startDifferenceK=4:10:4', 'fillsPerDay=2:2:1'])).toEqual([
      range('startDifferenceK', 4, 10, 4),
      range('fillsPerDay', 2, 2, 1),
    ]);
  });

  it.each([
    ['startDifferenceK', 'write setting=from:to:values'],
    ['startDifferenceK=4:10', 'write setting=from:to:values'],
    ['speed=1:2:2', "there is no setting 'speed'"],
    ['startDifferenceK=4:ten:4', 'to: '],
    ['startDifferenceK=4:10:0', 'values: '],
    ['startDifferenceK=4:10:51', 'values: '],
    ['startDifferenceK=4:10:1', 'one value needs'],
  ])('are refused with words: %s', (text, words) => {
    expect(() => readRanges([text])).toThrow(words);
  });
});
