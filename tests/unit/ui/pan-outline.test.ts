import { describe, expect, test } from 'vitest';
import { scaleOf } from '../../../desktop/ui/pan-check/chart-box.ts';
import { dayOutline, wholeSpan } from '../../../desktop/ui/pan-check/day-outline.ts';
import { groupOutline } from '../../../desktop/ui/pan-check/group-outline.ts';
import type { PanBlock, PanDay } from '../../../shared-types/pan-check.ts';
import type { Estimate } from '../../../shared-types/tuning.ts';

const box = { left: 50, top: 10, width: 400, height: 200 };
const band = (value: number, half: number): Estimate => ({ value, low: value - half, high: value + half });
const day = (name: string, ratio: Estimate): PanDay => ({
  day: name,
  hours: 4,
  measuredJ: 1e7,
  expectedJ: 1e7,
  ratio,
});
const block = (fromDay: string, toDay: string, ratio: Estimate): PanBlock => ({
  ...{ fromDay, toDay, ratio },
  ...{ days: 2, hours: 8, efficiency: band(0.8, 0.1), lossWM2K: null, contactKM2W: null },
});

describe('an upright scale', () => {
  test('ends at whole steps around all values, the greatest on top', () => {
    const { levels, y } = scaleOf([0.84, 1.01], 0.05, box);
    expect(y(0.8)).toBeCloseTo(210, 9);
    expect(y(1.05)).toBeCloseTo(10, 9);
    expect(levels.map(({ value }) => value)).toEqual([0.8, 0.85, 0.9, 0.95, 1, 1.05]);
    expect(levels[0]?.y).toBeCloseTo(210, 9);
  });

  test('keeps ends that are whole steps already, in spite of the last binary digit', () => {
    const { y } = scaleOf([0.15, 0.1 + 0.2], 0.05, box);
    expect(y(0.15)).toBeCloseTo(210, 9);
    expect(y(0.3)).toBeCloseTo(10, 9);
  });

  test('has room for a single value, no level finer than its step, and no place beyond its ends', () => {
    const { levels, y } = scaleOf([9], 1, box);
    expect(levels.map(({ value }) => value)).toEqual([9, 10]);
    expect(y(9)).toBe(210);
    expect(y(8)).toBe(210);
    expect(y(11)).toBe(10);
  });
});

describe('the days of a check', () => {
  // Days 1, 2, 4 and 10 of ten: 40 px for each.
  const check = {
    reference: block('2031-06-01', '2031-06-02', band(1, 0)),
    blocks: [block('2031-06-04', '2031-06-10', band(0.9, 0.05))],
    days: [
      day('2031-06-01', band(1, 0.05)),
      day('2031-06-02', band(1, 0.05)),
      day('2031-06-04', band(0.9, 0.1)),
      day('2031-06-10', band(0.9, 0.05)),
    ],
  };

  test('stand in the middle of their own place along the calendar, those of the reference marked', () => {
    const { days, dayPx } = dayOutline(check, box);
    expect(dayPx).toBe(40);
    expect(days.map(({ x, reference }) => [x, reference])).toEqual([
      [70, true],
      [110, true],
      [190, false],
      [430, false],
    ]);
  });

  test('and their groups stand as high as their ratio, between the ends of their bands', () => {
    const { days, groups, oneY, levels } = dayOutline(check, box);
    // From 80 % to 105 % are 200 px.
    expect(levels.map(({ value }) => value)).toEqual([0.8, 0.85, 0.9, 0.95, 1, 1.05]);
    expect(oneY).toBeCloseTo(50, 9);
    expect(days[2]?.y).toBeCloseTo(130, 9);
    expect(days[2]?.lowY).toBeCloseTo(210, 9);
    expect(days[2]?.highY).toBeCloseTo(50, 9);
    expect(groups.map(({ fromX, toX }) => [fromX, toX])).toEqual([
      [50, 130],
      [170, 450],
    ]);
    expect(groups[1]?.highY).toBeCloseTo(90, 9);
    expect(groups[1]?.lowY).toBeCloseTo(170, 9);
  });

  test('are named where there is room, below their places', () => {
    expect(dayOutline(check, box).ticks).toEqual([
      { day: '2031-06-01', x: 70 },
      { day: '2031-06-04', x: 190 },
      { day: '2031-06-07', x: 310 },
      { day: '2031-06-10', x: 430 },
    ]);
    expect(dayOutline(check, { ...box, width: 50 }).ticks).toHaveLength(1);
  });

  test('keep 100 % in sight, all values too, but of a band that tells nothing only a part', () => {
    const odd = (ratio: Estimate) => dayOutline({ ...check, days: [day('2031-06-04', ratio)] }, box).levels;
    const ends = (ratio: Estimate) => [odd(ratio)[0]?.value, odd(ratio).at(-1)?.value];
    expect(ends({ value: 0.9, low: -3, high: 5 })).toEqual([0.4, 1.6]);
    expect(ends({ value: 2, low: 1.9, high: 5 })).toEqual([1, 2]);
    expect(dayOutline({ ...check, days: [day('2031-06-04', band(0.7, 0.05))] }, box).oneY).toBe(10);
  });

  test('span from the first day of anything to the last', () => {
    expect(wholeSpan(check)).toEqual(['2031-06-01', '2031-06-10']);
    expect(wholeSpan({ ...check, days: [day('2031-07-01', band(1, 0.1))] })).toEqual([
      '2031-06-01',
      '2031-07-01',
    ]);
  });
});

describe('a coefficient of the groups', () => {
  test('stands at even places, and nowhere where it cannot be told', () => {
    const { points, levels } = groupOutline([band(9, 1), null, band(10, 0)], 1, { ...box, width: 300 });
    expect(points.map(({ x }) => x)).toEqual([100, 200, 300]);
    expect(points[0]?.shown).toEqual({ y: 110, lowY: 210, highY: 10 });
    expect(points[1]?.shown).toBeNull();
    expect(levels.map(({ value }) => value)).toEqual([8, 9, 10]);
  });

  test('names as many groups as have room, the reference always', () => {
    const named = (count: number) =>
      groupOutline(
        Array.from({ length: count }, () => band(9, 1)),
        1,
        { ...box, width: 272 },
      ).named;
    expect(named(4)).toEqual([0, 1, 2, 3]);
    expect(named(5)).toEqual([0, 2, 4]);
    expect(named(9)).toEqual([0, 3, 6]);
  });
});
