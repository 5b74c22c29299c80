import { describe, expect, it } from 'vitest';
import type { LoopFit } from '../../../../../shared-types/tuning.ts';
import { factorOf, loopsOf } from '../../../../../sim/replay/sweep/loops.ts';

const parameter = (name: string, value: number) => ({
  name,
  unit: '1',
  value,
  standardError: 0.1,
  heldBecause: null,
});
const fit: LoopFit = {
  schemaVersion: 1,
  site: 'x',
  days: ['2031-06-21'],
  converged: true,
  parameters: [parameter('stillLossWM2K', 10), parameter('windLossJM3K', 3)],
  covariance: [
    [0.04, 0.03],
    [0.03, 0.09],
  ],
  residuals: [],
  verdicts: [],
};

describe('the loops of a sweep', () => {
  it('are the fitted one first, then some that scatter as its covariance says', () => {
    const { loops, remarks } = loopsOf(fit, 4000, 7);
    expect(loops[0]).toEqual({ stillLossWM2K: 10, windLossJM3K: 3 });
    expect(loops).toHaveLength(4001);
    expect(remarks).toEqual(['The loop is that of the fit to 2031-06-21.']);
    const drawn = loops
      .slice(1)
      .map((loop) => [(loop.stillLossWM2K ?? 0) - 10, (loop.windLossJM3K ?? 0) - 3]);
    const mean = (of: (pair: number[]) => number) =>
      drawn.reduce((sum, pair) => sum + of(pair), 0) / drawn.length;
    expect(mean(([a = 0]) => a)).toBeCloseTo(0, 1);
    expect(mean(([a = 0]) => a * a)).toBeCloseTo(0.04, 2);
    expect(mean(([a = 0, b = 0]) => a * b)).toBeCloseTo(0.03, 2);
    expect(mean(([, b = 0]) => b * b)).toBeCloseTo(0.09, 2);
  });

  it('are usual ones without a fit, within the ranges of such, and say so', () => {
    const { loops, remarks } = loopsOf(undefined, 50, 7);
    expect(loops[0]).toEqual({});
    expect(remarks[0]).toContain('No fit of this loop is kept');
    for (const { opticalEfficiency = 0, stillLossWM2K = 0 } of loops.slice(1)) {
      expect(opticalEfficiency).toBeGreaterThanOrEqual(0.85);
      expect(opticalEfficiency).toBeLessThan(0.96);
      expect(stillLossWM2K).toBeGreaterThanOrEqual(8);
      expect(stillLossWM2K).toBeLessThan(15);
    }
    expect(new Set(loops.map(({ windLossJM3K }) => windLossJM3K)).size).toBe(51);
  });

  it('are the same for the same seed, and others for another', () => {
    expect(loopsOf(fit, 3, 1)).toEqual(loopsOf(fit, 3, 1));
    expect(loopsOf(fit, 3, 1)).not.toEqual(loopsOf(fit, 3, 2));
    expect(loopsOf(undefined, 3, 1)).not.toEqual(loopsOf(undefined, 3, 2));
  });
});

describe("Cholesky's factor", () => {
  it('gives the matrix back', () => {
    expect(
      factorOf([
        [4, 2],
        [2, 10],
      ]),
    ).toEqual([
      [2, 0],
      [1, 3],
    ]);
  });

  it('leaves out a direction that says nothing more', () => {
    expect(
      factorOf([
        [4, 4],
        [4, 4],
      ]),
    ).toEqual([
      [2, 0],
      [2, 0],
    ]);
    expect(
      factorOf([
        [0, 0],
        [0, 9],
      ]),
    ).toEqual([
      [0, 0],
      [0, 3],
    ]);
  });
});
