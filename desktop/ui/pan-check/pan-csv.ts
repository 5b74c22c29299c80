import type { PanCheck } from '../../../shared-types/pan-check.ts';
import type { Estimate } from '../../../shared-types/tuning.ts';
import { type CsvCell, rounded } from '../format/csv.ts';
import { heatIn, type Units } from '../format/units.ts';
import { en } from '../text/en.ts';
import { allBlocks, isReferenceDay } from './pan-groups.ts';

const text = en.panCheck.table;

type Table = readonly (readonly CsvCell[])[];

/** The groups as a table: a row a group, the reference first, each value with the ends of its band. */
export function groupTable(check: Pick<PanCheck, 'reference' | 'blocks'>): Table {
  return [
    [
      text.from,
      text.to,
      text.count,
      `${text.hours} [h]`,
      ...headOf(`${text.ratio} [1]`),
      ...headOf(`${text.efficiency} [1]`),
      ...headOf(text.lossCsv),
      ...headOf(`${text.contactCsv} [K m2/W]`),
    ],
    ...allBlocks(check).map((block) => [
      block.fromDay,
      block.toDay,
      block.days,
      rounded(block.hours, 2),
      ...cells(block.ratio, 4),
      ...cells(block.efficiency, 4),
      ...cells(block.lossWM2K, 3),
      ...cells(block.contactKM2W, 5),
    ]),
  ];
}

/** Every day of use as a table, heat in the chosen unit. */
export function dayTable(check: Pick<PanCheck, 'reference' | 'days'>, { heat: unit }: Units): Table {
  const heat = (valueJ: number) => rounded(heatIn(unit, valueJ), 4);
  return [
    [
      text.day,
      text.reference,
      `${text.hours} [h]`,
      `${text.measured} [${unit}]`,
      `${text.expected} [${unit}]`,
      ...headOf(`${text.ratio} [1]`),
    ],
    ...check.days.map(({ day, hours, measuredJ, expectedJ, ratio }) => [
      day,
      isReferenceDay(check, day) ? text.reference : '',
      rounded(hours, 2),
      heat(measuredJ),
      heat(expectedJ),
      ...cells(ratio, 4),
    ]),
  ];
}

const headOf = (title: string): readonly CsvCell[] => [
  title,
  `${title}, ${text.least}`,
  `${title}, ${text.most}`,
];

const cells = (estimate: Estimate | null, digits: number): readonly CsvCell[] =>
  estimate === null
    ? [null, null, null]
    : [rounded(estimate.value, digits), rounded(estimate.low, digits), rounded(estimate.high, digits)];
