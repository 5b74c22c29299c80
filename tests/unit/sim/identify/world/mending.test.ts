import { describe, expect, test } from 'vitest';
import { filled, median, smoothed } from '../../../../../sim/identify/world/mending.ts';

const hole = Number.NaN;

describe('a column of readings', () => {
  test('is filled by straight lines between what is known, and by the nearest beyond both ends', () => {
    expect([...(filled(Float64Array.of(hole, 2, hole, hole, 8, hole)) ?? [])]).toEqual([2, 2, 4, 6, 8, 8]);
  });

  test('that is whole stays as it is, and the given one is not touched', () => {
    const given = Float64Array.of(1, hole, 3);
    expect([...(filled(given) ?? [])]).toEqual([1, 2, 3]);
    expect(given[1]).toBeNaN();
  });

  test('in which nothing is known cannot be filled', () => {
    expect(filled(Float64Array.of(hole, hole))).toBeUndefined();
    expect(filled(undefined)).toBeUndefined();
  });

  test('is smoothed by the mean of its neighbours, of fewer at its ends', () => {
    expect([...smoothed(Float64Array.of(0, 3, 6, 0), 1)]).toEqual([1.5, 3, 3, 3]);
  });
});

test('the median is the middle one of an odd count, the mean of the middle two of an even one', () => {
  expect(median([9, 1, 4])).toBe(4);
  expect(median([9, 1, 4, 5])).toBe(4.5);
  expect(median([])).toBeNaN();
});
