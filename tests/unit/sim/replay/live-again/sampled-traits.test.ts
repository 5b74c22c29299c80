import { describe, expect, test } from 'vitest';
import type { LoopFit } from '../../../../../shared-types/tuning.ts';
import { choleskyOf, sampledTraits } from '../../../../../sim/replay/live-again/sampled-traits.ts';

const fitted = (name: string, value: number) => ({
  name,
  unit: '',
  value,
  standardError: 1,
  heldBecause: null,
});

const fit: LoopFit = {
  schemaVersion: 1,
  site: 'any',
  days: ['2031-06-21'],
  converged: true,
  parameters: [fitted('stillLossWM2K', 12), fitted('contactWM2K', 250)],
  covariance: [
    [1, 9],
    [9, 100],
  ],
  residuals: [],
  verdicts: [],
};

describe('loops that the one at hand may be', () => {
  test('begin with the best-known one', () => {
    expect(sampledTraits(fit, 2, 1)[0]).toEqual({ stillLossWM2K: 12, contactWM2K: 250 });
    expect(sampledTraits(null, 2, 1)[0]).toEqual({});
  });

  test('are the same for the same seed, and others for another', () => {
    expect(sampledTraits(fit, 3, 5)).toEqual(sampledTraits(fit, 3, 5));
    expect(sampledTraits(fit, 3, 5)).not.toEqual(sampledTraits(fit, 3, 6));
  });

  test('scatter as the covariance of the fit says', () => {
    const drawn = sampledTraits(fit, 2000, 1).slice(1);
    const still = drawn.map(({ stillLossWM2K = 0 }) => stillLossWM2K - 12);
    const contact = drawn.map(({ contactWM2K = 0 }) => contactWM2K - 250);
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(still)).toBeCloseTo(0, 0);
    expect(mean(still.map((value) => value ** 2))).toBeGreaterThan(0.9);
    expect(mean(still.map((value) => value ** 2))).toBeLessThan(1.1);
    expect(mean(still.map((value, i) => value * (contact[i] as number)))).toBeGreaterThan(8);
    expect(mean(still.map((value, i) => value * (contact[i] as number)))).toBeLessThan(10);
  });

  test('without a fit lie all over the ranges that are usual', () => {
    const drawn = sampledTraits(null, 200, 1).slice(1);
    const losses = drawn.map(({ stillLossWM2K = 0 }) => stillLossWM2K);
    expect(Math.min(...losses)).toBeGreaterThanOrEqual(8);
    expect(Math.min(...losses)).toBeLessThan(8.5);
    expect(Math.max(...losses)).toBeGreaterThan(14.5);
    expect(Math.max(...losses)).toBeLessThanOrEqual(15);
  });
});

test('the factor of Cholesky times itself is the matrix', () => {
  const matrix = [
    [4, 2, 0.4],
    [2, 5, 1],
    [0.4, 1, 3],
  ];
  const lower = choleskyOf(matrix);
  for (const [i, row] of matrix.entries())
    for (const [j, entry] of row.entries()) {
      let product = 0;
      for (let k = 0; k <= Math.min(i, j); k++) product += (lower[i]?.[k] ?? 0) * (lower[j]?.[k] ?? 0);
      expect(product).toBeCloseTo(entry, 12);
    }
});

test('what is certain is drawn as it is', () => {
  expect(
    choleskyOf([
      [0, 0],
      [0, 0],
    ]),
  ).toEqual([[0], [0, 0]]);
});
