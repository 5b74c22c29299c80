import { describe, expect, it } from 'vitest';
import { meterErrorFraction, permittedErrors } from '../../controller/engine/meter/error.ts';

/**
 * Error permitted to a complete heat meter with a least difference of 3 K by the formulas of EN 1434-1 (also
 * Directive 2014/32/EU, annex VI), the three parts added: class, flow over permanent flow, difference [K], error [%].
 * The formulas stand in data sheets of meters; the sums were worked out by hand. To half a unit of the last digit.
 */
const budget = [
  [2, 1, 3, 7.0],
  [3, 1, 3, 8.1],
  [2, 1, 5, 5.4],
  [3, 1, 5, 6.5],
  [2, 1, 10, 4.2],
  [3, 1, 10, 5.3],
  [2, 0.1, 10, 4.4],
  [3, 0.1, 10, 5.7],
] as const;

describe('permitted error of a heat meter', () => {
  it.each(budget)(
    'class %d at %d of the permanent flow and %d K',
    (accuracyClass, flow, differenceK, percent) => {
      const error = 100 * meterErrorFraction(accuracyClass, flow, differenceK);
      expect(Math.abs(error - percent)).toBeLessThanOrEqual(0.05 + 1e-9);
    },
  );

  it.each([2, 3] as const)('of the flow in class %d is at most 5 %%', (accuracyClass) => {
    expect(permittedErrors(accuracyClass, 1e-3, 10)[0]).toBe(0.05);
  });
});
