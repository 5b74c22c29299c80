import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../sim/identify/least-squares/least-squares.ts';

/**
 * Statistical Reference Datasets of NIST (StRD): nonlinear regression Misra1a and DanWood, linear regression Norris.
 * Certified values: coefficients, their standard deviations, and the residual sum of squares or standard deviation.
 */
interface Dataset {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly model: (x: number, b: readonly number[]) => number;
  readonly starts: readonly (readonly number[])[];
  readonly certified: readonly number[];
  readonly deviations: readonly number[];
  readonly sumOfSquares: number;
}

const at = (b: readonly number[], i: number) => b[i] as number;

const misra1a: Dataset = {
  name: 'Misra1a',
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  model: (x, b) => at(b, 0) * (1 - Math.exp(-at(b, 1) * x)),
  starts: [
    [500, 1e-4],
    [250, 5e-4],
  ],
  certified: [238.94212918, 5.5015643181e-4],
  deviations: [2.7070075241, 7.2668688436e-6],
  sumOfSquares: 0.12455138894,
};

const danWood: Dataset = {
  name: 'DanWood',
  x: [1.309, 1.471, 1.49, 1.565, 1.611, 1.68],
  y: [2.138, 3.421, 3.597, 4.34, 4.882, 5.66],
  model: (x, b) => at(b, 0) * x ** at(b, 1),
  starts: [
    [1, 5],
    [0.7, 4],
  ],
  certified: [0.76886226176, 3.8604055871],
  deviations: [0.01828197386, 0.051726610913],
  sumOfSquares: 4.3173084083e-3,
};

const norris: Dataset = {
  name: 'Norris',
  x: [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338,
    447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2,
    669.1, 448.9, 0.5,
  ],
  y: [
    0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
    448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6,
    228.9, 668.4, 449.2, 0.2,
  ],
  model: (x, b) => at(b, 0) + at(b, 1) * x,
  starts: [[0, 0]],
  certified: [-0.262323073774029, 1.00211681802045],
  deviations: [0.232818234301152, 4.29796848199937e-4],
  sumOfSquares: 34 * 0.884796396144373 ** 2,
};

const cases = [misra1a, danWood, norris].flatMap((set) =>
  set.starts.map((start) => [`${set.name} from ${start.join(', ')}`, set, start] as const),
);

/** Six significant digits and more. */
function expectDigits(value: number, certified: number): void {
  expect(Math.abs(value / certified - 1)).toBeLessThan(5e-7);
}

describe('least squares against certified values', () => {
  it.each(cases)('%s', (_name, { x, y, model, certified, deviations, sumOfSquares }, start) => {
    const found = leastSquares({
      residuals: (b) => Float64Array.from(x, (here, i) => (y[i] as number) - model(here, b)),
      start,
      steps: certified.map((value) => 1e-5 * Math.abs(value)),
    });
    if (!found.converged) throw new Error(found.why);
    const variance = found.sumOfSquares / (x.length - start.length);
    for (const [i, value] of certified.entries()) {
      expectDigits(at(found.parameters, i), value);
      expectDigits(Math.sqrt(variance * (found.unitCovariance[i]?.[i] as number)), at(deviations, i));
    }
    expectDigits(found.sumOfSquares, sumOfSquares);
  });
});
