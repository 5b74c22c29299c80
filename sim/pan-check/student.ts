import type { Estimate } from '../../shared-types/tuning.ts';

/** Half width of a two-sided 95 % band of the normal distribution, in standard deviations. */
const normal = 1.959964;

/**
 * Half width of a two-sided 95 % band in standard errors, when those were told by few samples.
 *
 * @param freedom - Degrees of freedom, 2 or more.
 *
 * Error: 3.1 % too small at 2 degrees of freedom, 0.8 % at 3, below 0.3 % from 4 on (tests/reference).
 * Source: the expansion 26.7.5 of Abramowitz & Stegun, Handbook of Mathematical Functions, from memory.
 */
export function studentHalfWidth(freedom: number): number {
  const z = normal;
  return (
    z +
    (z ** 3 + z) / (4 * freedom) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * freedom ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * freedom ** 3)
  );
}

/**
 * What is apart by so many half widths is said to be so: at the six degrees of freedom of a week 99 %, so that a pan which
 * is as it was is seldom accused. A design choice.
 */
export const sureHalfWidths = 1.5;

/** A value and the 95 % band about it that its standard error makes. */
export function bandAbout(value: number, standardError: number, freedom: number): Estimate {
  const half = studentHalfWidth(freedom) * standardError;
  return { value, low: value - half, high: value + half };
}

/** Mean of two samples or more, and its standard error. */
export function meanOf(values: readonly number[]) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, standardError: Math.sqrt(squares / (values.length - 1) / values.length) };
}
