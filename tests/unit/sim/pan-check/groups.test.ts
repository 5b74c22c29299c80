import { describe, expect, it } from 'vitest';
import { groupedDays } from '../../../../sim/pan-check/groups.ts';

const days = (count: number) =>
  Array.from({ length: count }, (_, index) => ({
    day: `2031-06-${String(index + 1).padStart(2, '0')}`,
    stretches: [],
  }));
const sizes = (count: number, asked: readonly string[] = []) => {
  const { reference, groups } = groupedDays(days(count), asked);
  return [reference.length, groups.map((group) => group.length)];
};

describe('days that are compared', () => {
  it('are those of the oldest week, or half of all', () => {
    expect([sizes(6), sizes(7), sizes(13), sizes(14), sizes(20)]).toEqual([
      [3, [3]],
      [3, [4]],
      [6, [7]],
      [7, [7]],
      [7, [6, 7]],
    ]);
  });

  it('leave no group of fewer than three', () => {
    expect([sizes(4), sizes(5), sizes(16), sizes(17)]).toEqual([
      [2, []],
      [2, [3]],
      [7, [9]],
      [7, [3, 7]],
    ]);
  });

  it('are the ones that are asked for, wherever they stand', () => {
    const asked = days(12)
      .slice(6, 9)
      .map(({ day }) => day);
    expect(sizes(12, asked)).toEqual([3, [9]]);
    const { reference, groups } = groupedDays(days(13), asked);
    expect(reference.map(({ day }) => day)).toEqual(asked);
    expect(groups.flat().some(({ day }) => asked.includes(day))).toBe(false);
    expect(sizes(5, ['2030-01-01'])).toEqual([0, [5]]);
  });
});
