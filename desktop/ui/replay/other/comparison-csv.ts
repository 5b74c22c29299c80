import type { Comparison, DayOutcome, Estimate } from '../../../../shared-types/tuning.ts';
import { type CsvCell, rounded } from '../../format/csv.ts';
import { heatIn, type Units } from '../../format/units.ts';
import { en } from '../../text/en.ts';

const { rows: titles, columns, ...text } = en.tuning.other;

type Convert = (value: number) => number;
const plain: Convert = (value) => rounded(value, 3);

/** A comparison as a table: a row a quantity, each side with the ends of its band. */
export function comparisonTable(comparison: Comparison, units: Units): readonly (readonly CsvCell[])[] {
  const { logged, base, tried, heatGainJ, bestPossibleJ } = comparison;
  const heat: Convert = (valueJ) => rounded(heatIn(units.heat, valueJ), 4);
  const row = (title: string, unit: string, of: keyof DayOutcome, convert: Convert, was: number | null) => [
    `${title} [${unit}]`,
    was === null ? null : convert(was),
    ...cells(base[of], convert),
    ...cells(tried[of], convert),
    ...(of === 'heatHomeJ'
      ? cells(heatGainJ, convert)
      : [differenceOf(base[of], tried[of], convert), null, null]),
  ];
  return [
    head(comparison.day),
    row(titles.heatHome, units.heat, 'heatHomeJ', heat, logged.heatHomeJ),
    row(titles.electricity, units.heat, 'electricityJ', heat, logged.electricityJ),
    row(titles.pumpRun, 's', 'pumpRunS', plain, logged.pumpRunS),
    row(titles.starts, '1', 'starts', plain, logged.starts),
    row(titles.fills, '1', 'fills', plain, logged.fills),
    row(titles.frost, 'K', 'aboveFreezingK', plain, null),
    row(titles.liner, 'K', 'belowLinerLimitK', plain, null),
    ...(bestPossibleJ === null
      ? []
      : [[`${text.bestRow} [${units.heat}]`, heat(bestPossibleJ)] as CsvCell[]]),
  ];
}

function head(day: string): readonly CsvCell[] {
  const side = (title: string) => [title, `${title}, ${columns.low}`, `${title}, ${columns.high}`];
  return [day, text.logged, ...side(text.base), ...side(text.tried), ...side(text.difference)];
}

const cells = (estimate: Estimate | null, convert: Convert): readonly CsvCell[] =>
  estimate === null
    ? [null, null, null]
    : [convert(estimate.value), convert(estimate.low), convert(estimate.high)];

const differenceOf = (base: Estimate | null, tried: Estimate | null, convert: Convert): CsvCell =>
  base === null || tried === null ? null : convert(tried.value - base.value);
