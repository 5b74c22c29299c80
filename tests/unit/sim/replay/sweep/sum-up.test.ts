import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../../../../shared-types/settings.ts';
import { sumUp } from '../../../../../sim/replay/sweep/sum-up.ts';
import type { Tried } from '../../../../../sim/replay/sweep/trial.ts';

const tried = (heatHomeJ: [number, ...number[]], rest: Partial<Tried> = {}): Tried => ({
  heatHomeJ,
  electricityJ: 1,
  starts: 2,
  fills: 3,
  aboveFreezingK: 4,
  mostIceKg: 0,
  belowLinerLimitK: 5,
  beyondLogS: 600,
  ...rest,
});
const points = [
  { change: {}, settings: defaultSettings },
  { change: { fillsPerDay: 2 }, settings: { ...defaultSettings, fillsPerDay: 2 } },
];

describe('sums of a sweep', () => {
  it('add the days, and take the least of the margins', () => {
    const [base, other] = sumUp(points, [
      [tried([100, 90]), tried([110, 102], { aboveFreezingK: null, mostIceKg: 6, starts: 1 })],
      [tried([50, 40]), tried([60, 48], { aboveFreezingK: 7, belowLinerLimitK: 2, beyondLogS: 900 })],
    ]);
    expect(base).toMatchObject({
      change: {},
      electricityJ: 2,
      starts: 4,
      fills: 6,
      aboveFreezingK: 4,
      belowLinerLimitK: 5,
    });
    expect(base?.heatHomeJ.value).toBe(150);
    expect(base?.heatGainJ).toEqual({ value: 0, low: 0, high: 0 });
    expect(other).toMatchObject({
      change: { fillsPerDay: 2 },
      starts: 3,
      aboveFreezingK: 7,
      mostIceKg: 6,
      belowLinerLimitK: 2,
      beyondLogS: 1500,
    });
    expect(other?.heatGainJ.value).toBe(20);
    // The other loop gains 20 as well: both err together, and the gain has no band.
    expect(other?.heatGainJ.low).toBe(20);
    expect(other?.heatHomeJ.low).toBeCloseTo(170 - 12.71 * 20, 9);
    expect(base?.onFront).toBe(false);
    expect(other?.onFront).toBe(true);
  });

  it.each(['electricityJ', 'starts', 'fills'] as const)('put on the front what needs less by %s', (cost) => {
    const [, other] = sumUp(points, [[tried([100]), tried([99], { [cost]: 0 })]]);
    expect(other?.onFront).toBe(true);
    expect(sumUp(points, [[tried([100]), tried([99])]])[1]?.onFront).toBe(false);
  });

  it('know no margin where no day has one', () => {
    const [base] = sumUp(points, [[tried([1], { aboveFreezingK: null }), tried([1])]]);
    expect(base?.aboveFreezingK).toBe(null);
  });
});
