import type { DayOutcome, Estimate } from '../../../shared-types/tuning.ts';
import type { Lived } from './lived.ts';

/**
 * Two-sided 95 % quantiles of Student's distribution for 1, 2, .. 12 drawn values, as its tables have them (from
 * memory). Of more drawn values the last one holds.
 */
const quantiles = [12.71, 4.3, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23, 2.2, 2.18];

/** The best-known value, and how far the drawn ones scatter about it. @param values - The best-known first. */
export function estimateOf([value = Number.NaN, ...drawn]: readonly number[]): Estimate {
  if (drawn.length === 0) return { value, low: value, high: value };
  const square = drawn.reduce((sum, one) => sum + (one - value) ** 2, 0);
  const quantile = quantiles[Math.min(drawn.length, quantiles.length) - 1] as number;
  const half = quantile * Math.sqrt(square / drawn.length);
  return { value, low: value - half, high: value + half };
}

/** What a day brings by all loops that the one at hand may be; the best-known first. */
export function outcomeOf(lived: readonly Lived[], linerLimitC: number): DayOutcome {
  const of = (value: (life: Lived) => number) => estimateOf(lived.map(value));
  const known = (values: readonly (number | null)[]) => {
    const numbers = values.filter((value) => value !== null);
    return values[0] === null || numbers.length === 0 ? null : estimateOf(numbers);
  };
  return {
    heatHomeJ: of(({ heatHomeJ }) => heatHomeJ),
    electricityJ: notNegative(of(({ electricityJ }) => electricityJ)),
    pumpRunS: notNegative(of(({ pumpRunS }) => pumpRunS)),
    starts: notNegative(of(({ starts }) => starts)),
    fills: notNegative(of(({ fills }) => fills)),
    aboveFreezingK: known(lived.map(({ extremes }) => extremes.lowestPanC)),
    belowLinerLimitK: known(
      lived.map(({ extremes: { highestSheetC } }) =>
        highestSheetC === null ? null : linerLimitC - highestSheetC,
      ),
    ),
  };
}

const notNegative = ({ value, low, high }: Estimate): Estimate => ({ value, low: Math.max(0, low), high });
