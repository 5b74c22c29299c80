import type { DayOutcome, Estimate } from '../../../shared-types/tuning.ts';
import type { Lived } from './lived.ts';

/**
 * Half the width of a band of 95 % over the standard deviation of a dozen samples: Student's t with 11 degrees of
 * freedom (tables).
 */
const coverage = 2.2;

/** The best-known value with the band of what the others scatter. @param values - The best-known first. */
export function estimateOf(values: readonly number[]): Estimate {
  const [value = Number.NaN, ...others] = values;
  if (others.length === 0) return { value, low: value, high: value };
  const mean = others.reduce((sum, other) => sum + other, 0) / others.length;
  const squares = others.reduce((sum, other) => sum + (other - mean) ** 2, 0);
  const half = coverage * Math.sqrt(squares / Math.max(1, others.length - 1));
  return { value, low: Math.min(value, mean - half), high: Math.max(value, mean + half) };
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
