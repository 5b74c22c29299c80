import { describe, expect, it } from 'vitest';
import { studentHalfWidth } from '../../sim/pan-check/student.ts';

// Two-sided 95 % points of Student's t distribution, as tables in any textbook of statistics print them.
const printed = [
  [4, 2.776],
  [5, 2.571],
  [6, 2.447],
  [7, 2.365],
  [8, 2.306],
  [10, 2.228],
  [15, 2.131],
  [20, 2.086],
  [30, 2.042],
  [60, 2.0],
  [120, 1.98],
] as const;

describe("the half width of a band by Student's t", () => {
  it.each(printed)('for %d degrees of freedom is %d to 0.3 %', (freedom, halfWidth) => {
    expect(Math.abs(studentHalfWidth(freedom) / halfWidth - 1)).toBeLessThan(0.003);
  });

  it('is a little too small for two and three, and that of the normal distribution for very many', () => {
    expect(studentHalfWidth(2) / 4.303 - 1).toBeGreaterThan(-0.0315);
    expect(studentHalfWidth(2) / 4.303 - 1).toBeLessThan(0);
    expect(studentHalfWidth(3) / 3.182 - 1).toBeGreaterThan(-0.008);
    expect(studentHalfWidth(3) / 3.182 - 1).toBeLessThan(0);
    expect(Math.abs(studentHalfWidth(1e9) - 1.959964)).toBeLessThan(1e-6);
  });
});
