import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../sim/identify/least-squares/least-squares.ts';
import type { Found, LeastSquaresProblem, NotFound } from '../../../sim/identify/least-squares/problem.ts';

/** y = a + b x, measured with standard deviation 1 at 0, 1, 2 and 3. */
const line: LeastSquaresProblem = {
  residuals: ([a = 0, b = 0]) => Float64Array.from([1, 3, 5, 7], (y, x) => y - a - b * x),
  start: [0, 0],
  steps: [1e-3, 1e-3],
};

function numbersOf(found: Found | NotFound): Found {
  if (!found.converged) throw new Error(found.why);
  return found;
}
const whyOf = (found: Found | NotFound) => (found.converged ? 'converged' : found.why);

describe('least squares', () => {
  it('finds a line and the textbook covariance of its two numbers', () => {
    const { parameters, unitCovariance, atBound } = numbersOf(leastSquares(line));
    expect(parameters[0]).toBeCloseTo(1, 9);
    expect(parameters[1]).toBeCloseTo(2, 9);
    // (J'J)^-1 with J'J = [[4, 6], [6, 14]].
    expect(unitCovariance.flat().map((value) => Math.round(value * 1e9) / 1e9)).toEqual([
      0.7, -0.3, -0.3, 0.2,
    ]);
    expect(atBound).toEqual([false, false]);
  });

  it.each([
    ['above', { most: [Number.POSITIVE_INFINITY, 1.5] }, 1.5],
    ['below', { least: [Number.NEGATIVE_INFINITY, 2.5] }, 2.5],
  ])('stays within a bound %s and says so', (_side, bounds, slope) => {
    const { parameters, atBound, unitCovariance } = numbersOf(leastSquares({ ...line, ...bounds }));
    expect(parameters[1]).toBe(slope);
    // The best intercept for that slope: the mean of y - slope x.
    expect(parameters[0]).toBeCloseTo(4 - 1.5 * slope, 6);
    expect(atBound).toEqual([false, true]);
    expect(unitCovariance[1]).toEqual([0, 0]);
    expect(unitCovariance[0]?.[0]).toBeCloseTo(0.25, 9);
  });

  it('comes away from a bound that it begins at', () => {
    const { parameters } = numbersOf(leastSquares({ ...line, least: [0, 0], most: [9, 9] }));
    expect(parameters[1]).toBeCloseTo(2, 9);
  });

  it('brings a start outside its bounds to them', () => {
    const { parameters } = numbersOf(leastSquares({ ...line, start: [-5, 20], least: [0, 0], most: [9, 9] }));
    expect(parameters[0]).toBeCloseTo(1, 9);
  });

  it('ends when every parameter presses against its bound', () => {
    const { parameters, unitCovariance } = numbersOf(leastSquares({ ...line, most: [0, 0] }));
    expect(parameters).toEqual([0, 0]);
    expect(unitCovariance).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });

  it('gives no number when two parameters do the same', () => {
    const same: LeastSquaresProblem = {
      ...line,
      residuals: ([a = 0, b = 0]) => Float64Array.from([1, 2, 3], (y) => y - a - b),
    };
    expect(whyOf(leastSquares(same))).toContain('changes nothing that was measured');
  });

  it('gives no number when a parameter does nothing', () => {
    const idle: LeastSquaresProblem = {
      ...line,
      residuals: ([a = 0]) => Float64Array.from([1, 2, 3], (y) => y - a),
    };
    expect(whyOf(leastSquares(idle))).toContain('changes nothing that was measured');
  });

  it('gives no number when the steps run out', () => {
    const valley: LeastSquaresProblem = {
      residuals: ([a = 0, b = 0]) => Float64Array.of(10 * (b - a * a), 1 - a),
      start: [-1.2, 1],
      steps: [1e-6, 1e-6],
    };
    expect(whyOf(leastSquares({ ...valley, mostIterations: 3 }))).toBe('3 steps did not end it');
    expect(numbersOf(leastSquares(valley)).parameters[0]).toBeCloseTo(1, 6);
  });

  it('gives no number when it cannot be computed at all', () => {
    const broken = { ...line, residuals: () => Float64Array.of(Number.NaN, 1, 2) };
    expect(whyOf(leastSquares(broken))).toContain('where the search begins');
  });

  it('gives no number when it cannot be computed beside where it stands', () => {
    const cliff: LeastSquaresProblem = {
      ...line,
      residuals: ([a = 0, b = 0]) =>
        Float64Array.from([1, 3, 5, 7], (y, x) => (b < 0 ? Number.NaN : y - a - b * x)),
      steps: [1e-3, 1e-3],
    };
    expect(whyOf(leastSquares(cliff))).toContain('beside where the search came to');
  });

  it('gives no number when no step helps, because differences point the wrong way', () => {
    const tooth: LeastSquaresProblem = {
      residuals: ([a = 0]) => Float64Array.of(a < 0 ? 9 : 5 + a),
      start: [0],
      steps: [1e-3],
      oneSided: true,
    };
    expect(whyOf(leastSquares(tooth))).toBe('no step from here makes the misfit less');
    expect(leastSquares(tooth)).toMatchObject({ stuckAt: [0] });
  });

  it('can be given up, and is told how far it came', () => {
    const told: number[] = [];
    const goOn = (iteration: number) => told.push(iteration) < 1;
    expect(whyOf(leastSquares({ ...line, goOn }))).toBe('it was given up');
    expect(told).toEqual([1]);
  });

  it('takes half the looks when differences are one-sided', () => {
    const countOf = (oneSided: boolean) => {
      let looks = 0;
      const residuals = (b: readonly number[]) => {
        looks++;
        return line.residuals(b);
      };
      numbersOf(leastSquares({ ...line, residuals, oneSided, mostIterations: 20 }));
      return looks;
    };
    expect(countOf(true)).toBeLessThan(countOf(false));
  });
});
