import { describe, expect, test } from 'vitest';
import type { LoopFit } from '../../../../../shared-types/tuning.ts';
import { moreSkyWM2, type OwnSky, usualLoop, usualSky } from '../../../../../sim/identify/possible-loop.ts';
import { choleskyOf, possibleLoops } from '../../../../../sim/replay/live-again/possible-loops.ts';

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
  sensorErrors: [{ channel: 'ambientC', kind: 'offset', value: 0.3, standardError: 0.1 }],
  covariance: [
    [1, 9, 0.02],
    [9, 100, 0],
    [0.02, 0, 0.01],
  ],
  residuals: [],
  verdicts: [],
};

const moreOf = (sky: OwnSky) => moreSkyWM2(sky, Date.parse('2031-06-21T12:00:00Z'));

describe('loops that the one at hand may be', () => {
  test('begin with the best-known one', () => {
    expect(possibleLoops(fit, 2, 1)[0]).toEqual({
      traits: { stillLossWM2K: 12, contactWM2K: 250 },
      sensorErrors: { ambientC: { share: 0, offset: 0.3 } },
      sky: usualSky,
    });
    expect(possibleLoops(null, 2, 1)[0]).toEqual(usualLoop);
  });

  test('are the same for the same seed, and others for another', () => {
    expect(possibleLoops(fit, 3, 5)).toEqual(possibleLoops(fit, 3, 5));
    expect(possibleLoops(fit, 3, 5)).not.toEqual(possibleLoops(fit, 3, 6));
  });

  test('scatter as the covariance of the fit says', () => {
    const drawn = possibleLoops(fit, 2000, 1).slice(1);
    const still = drawn.map(({ traits }) => (traits.stillLossWM2K ?? 0) - 12);
    const contact = drawn.map(({ traits }) => (traits.contactWM2K ?? 0) - 250);
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(still)).toBeCloseTo(0, 0);
    expect(mean(still.map((value) => value ** 2))).toBeGreaterThan(0.9);
    expect(mean(still.map((value) => value ** 2))).toBeLessThan(1.1);
    expect(mean(still.map((value, i) => value * (contact[i] as number)))).toBeGreaterThan(8);
    expect(mean(still.map((value, i) => value * (contact[i] as number)))).toBeLessThan(10);
    const air = drawn.map(({ sensorErrors }) => (sensorErrors.ambientC?.offset ?? 0) - 0.3);
    expect(mean(air.map((value) => value ** 2))).toBeGreaterThan(0.009);
    expect(mean(air.map((value) => value ** 2))).toBeLessThan(0.011);
    expect(mean(still.map((value, i) => value * (air[i] as number)))).toBeGreaterThan(0.015);
  });

  test('have skies that scatter about the usual one, with a fit and without', () => {
    for (const known of [fit, null]) {
      const skies = possibleLoops(known, 2000, 1).slice(1);
      const mean = (of: (sky: OwnSky) => number) => skies.reduce((sum, { sky }) => sum + of(sky), 0) / 2000;
      expect(mean(({ cloudShare }) => cloudShare)).toBeCloseTo(0.5, 1);
      expect(Math.abs(mean(moreOf))).toBeLessThan(2);
      expect(Math.sqrt(mean((sky) => moreOf(sky) ** 2))).toBeCloseTo(20, -0.5);
      expect(Math.sqrt(mean(({ cloudShare }) => (cloudShare - 0.5) ** 2))).toBeCloseTo(0.5, 1);
    }
  });

  test('without a fit lie all over the ranges that are usual', () => {
    const drawn = possibleLoops(null, 200, 1).slice(1);
    const losses = drawn.map(({ traits }) => traits.stillLossWM2K ?? 0);
    expect(Math.min(...losses)).toBeGreaterThanOrEqual(8);
    expect(Math.min(...losses)).toBeLessThan(8.5);
    expect(Math.max(...losses)).toBeGreaterThan(14.5);
    expect(Math.max(...losses)).toBeLessThanOrEqual(15);
  });

  test('without a fit have sensors that show anything that their makes may', () => {
    const drawn = possibleLoops(null, 200, 1).slice(1);
    const air = drawn.map(({ sensorErrors }) => sensorErrors.ambientC?.offset ?? 0);
    const sun = drawn.map(({ sensorErrors }) => sensorErrors.irradianceWM2?.share ?? 0);
    expect([Math.min(...air) < -0.45, Math.max(...air) > 0.45]).toEqual([true, true]);
    expect([Math.min(...air) >= -0.5, Math.max(...air) <= 0.5]).toEqual([true, true]);
    expect([Math.min(...sun) < -0.045, Math.max(...sun) > 0.045]).toEqual([true, true]);
    expect([Math.min(...sun) >= -0.05, Math.max(...sun) <= 0.05]).toEqual([true, true]);
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
