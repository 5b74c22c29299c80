import { describe, expect, it } from 'vitest';
import { residualTest } from '../../../sim/identify/residual-tests.ts';

const misfit = (apart: readonly number[], blocks = apart.map((_, index) => index)) => ({
  channel: 'panSheetC' as const,
  day: 0,
  blocks,
  apart: Float64Array.from(apart),
});

describe('what is left over', () => {
  it('is counted, with its mean and its root mean square', () => {
    const { samples, mean, rms } = residualTest([misfit([3, -1]), misfit([1, 1])]);
    expect([samples, mean, rms]).toEqual([4, 1, Math.sqrt(3)]);
  });

  it('is told to alternate', () => {
    const { lagOneCorrelation, runsZ } = residualTest([misfit([1, -1, 1, -1, 1, -1, 1, -1, 1, -1])]);
    expect(lagOneCorrelation).toBe(-1);
    // 10 runs where 6 are expected, with a variance of 20/9 (Wald & Wolfowitz).
    expect(runsZ).toBeCloseTo(4 / Math.sqrt(20 / 9), 12);
  });

  it('is told to last', () => {
    const { lagOneCorrelation, runsZ } = residualTest([misfit([1, 1, 1, 1, 1, -1, -1, -1, -1, -1])]);
    expect(lagOneCorrelation).toBeCloseTo(7 / 9, 12);
    expect(runsZ).toBeCloseTo(-4 / Math.sqrt(20 / 9), 12);
  });

  it('pairs neighbours only', () => {
    const gaps = Array.from({ length: 10 }, (_, index) => 2 * index);
    expect(residualTest([misfit(Array(10).fill(1), gaps)]).lagOneCorrelation).toBe(0);
  });

  it('takes eight pairs to speak of a correlation', () => {
    expect(residualTest([misfit(Array(8).fill(1))]).lagOneCorrelation).toBe(0);
    expect(residualTest([misfit(Array(9).fill(1))]).lagOneCorrelation).toBe(1);
  });

  it('of nothing is nothing', () => {
    expect(residualTest([])).toEqual({ samples: 0, rms: 0, mean: 0, lagOneCorrelation: 0, runsZ: 0 });
  });
});
