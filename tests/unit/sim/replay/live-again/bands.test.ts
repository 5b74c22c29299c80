import { describe, expect, test } from 'vitest';
import { estimateOf, outcomeOf } from '../../../../../sim/replay/live-again/bands.ts';
import type { Lived } from '../../../../../sim/replay/live-again/lived.ts';

const extremes = { lowestPanC: 5, highestPanC: 50, highestSheetC: 60, highestStoreC: 40, mostIceKg: 0 };
const life = (heatHomeJ: number, changes: Partial<Lived> = {}): Lived => ({
  heatHomeJ,
  electricityJ: 1,
  pumpRunS: 10,
  starts: 1,
  fills: 1,
  extremes,
  curves: {
    day: '2031-06-21',
    atMs: [],
    series: {},
    pumpFraction: [],
    heatTodayJ: [],
    phases: [],
    events: [],
  },
  ...changes,
});

describe('an estimate', () => {
  test('of one loop alone has no width', () => {
    expect(estimateOf([7])).toEqual({ value: 7, low: 7, high: 7 });
  });

  test('is by how much the drawn ones miss it, the wider the fewer they are', () => {
    const half = 4.3 * Math.sqrt(12.5);
    expect(estimateOf([10, 13, 6])).toEqual({ value: 10, low: 10 - half, high: 10 + half });
  });

  test.each([
    [1, 12.71],
    [4, 2.78],
    [12, 2.18],
    [13, 2.18],
  ])('takes %i drawn values for %f root mean squares', (count, quantile) => {
    const drawn = Array.from({ length: count }, () => 11);
    expect(estimateOf([10, ...drawn]).high).toBeCloseTo(10 + quantile, 9);
  });
});

describe('what a day brings', () => {
  test('is never below nought where there is nothing below it', () => {
    const { starts } = outcomeOf([life(1), life(1, { starts: 0 }), life(1, { starts: 4 })], 80);
    expect(starts.low).toBe(0);
  });

  test('counts the liner from its limit down and the pan from freezing up', () => {
    const { aboveFreezingK, belowLinerLimitK } = outcomeOf([life(1)], 85);
    expect(aboveFreezingK?.value).toBe(5);
    expect(belowLinerLimitK?.value).toBe(25);
  });

  test('says nothing of a pan that never held water', () => {
    const dry = life(1, { extremes: { ...extremes, lowestPanC: null, highestSheetC: null } });
    const { aboveFreezingK, belowLinerLimitK } = outcomeOf([dry, life(1)], 85);
    expect(aboveFreezingK).toBeNull();
    expect(belowLinerLimitK).toBeNull();
  });
});
