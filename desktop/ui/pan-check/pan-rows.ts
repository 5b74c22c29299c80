import type { PanBlock, PanCheck } from '../../../shared-types/pan-check.ts';
import type { Estimate } from '../../../shared-types/tuning.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import { bandBars } from '../replay/other/band-bar.ts';
import { type ShownValue, shownValue } from '../replay/other/side-rows.ts';
import { allBlocks, isReferenceDay } from './pan-groups.ts';

/** A group of days in words; null where they do not tell it. */
export interface GroupRow {
  readonly fromDay: string;
  readonly toDay: string;
  readonly count: string;
  readonly hours: string;
  readonly ratio: ShownValue | null;
  readonly efficiency: ShownValue | null;
  readonly loss: ShownValue | null;
  readonly contact: ShownValue | null;
}

export interface DayRow {
  readonly day: string;
  readonly reference: boolean;
  readonly hours: string;
  readonly measured: string;
  readonly expected: string;
  readonly ratio: ShownValue;
}

type Show = (value: number) => string;

/** What the sheet hands on where its distance from the water is told [W/m2]. A design choice. */
const contactAtWM2 = 1000;

/** Digits of what the screens show of a check. */
export const showsOf = (numbers: NumberFormats) => ({
  ratio: (value: number) => inLine(numbers.measure(100 * value, 1, '%')),
  efficiency: (value: number) => inLine(numbers.measure(value, 3, '')),
  loss: (value: number) => inLine(numbers.measure(value, 1, '')),
  contact: (valueKM2W: number) => inLine(numbers.difference(contactAtWM2 * valueKM2W)),
  hours: (value: number) => inLine(numbers.measure(value, 1, 'h')),
  heat: (valueJ: number) => inLine(numbers.heat(valueJ)),
});

/** The groups, the reference first; the bars of a column stand on one scale. */
export function groupRows(
  check: Pick<PanCheck, 'reference' | 'blocks'>,
  numbers: NumberFormats,
): readonly GroupRow[] {
  const blocks = allBlocks(check);
  const show = showsOf(numbers);
  const column = (of: (block: PanBlock) => Estimate | null, as: Show) => inColumn(blocks.map(of), as);
  const ratios = column(({ ratio }) => ratio, show.ratio);
  const efficiencies = column(({ efficiency }) => efficiency, show.efficiency);
  const losses = column(({ lossWM2K }) => lossWM2K, show.loss);
  const contacts = column(({ contactKM2W }) => contactKM2W, show.contact);
  return blocks.map(({ fromDay, toDay, days, hours }, index) => ({
    fromDay,
    toDay,
    count: numbers.count(days),
    hours: show.hours(hours),
    ratio: ratios[index] ?? null,
    efficiency: efficiencies[index] ?? null,
    loss: losses[index] ?? null,
    contact: contacts[index] ?? null,
  }));
}

/** Every day of use, rising. */
export function dayRows(
  check: Pick<PanCheck, 'reference' | 'days'>,
  numbers: NumberFormats,
): readonly DayRow[] {
  const show = showsOf(numbers);
  const bars = bandBars(check.days.map(({ ratio }) => ratio));
  return check.days.map(({ day, hours, measuredJ, expectedJ, ratio }, index) => ({
    day,
    reference: isReferenceDay(check, day),
    hours: show.hours(hours),
    measured: show.heat(measuredJ),
    expected: show.heat(expectedJ),
    ratio: { ...shownValue(ratio, show.ratio), bar: bars?.[index] ?? null },
  }));
}

function inColumn(estimates: readonly (Estimate | null)[], show: Show): readonly (ShownValue | null)[] {
  const there = estimates.filter((one) => one !== null);
  const bars = there.length === 0 ? undefined : bandBars(there);
  return estimates.map((one) =>
    one === null ? null : { ...shownValue(one, show), bar: bars?.[there.indexOf(one)] ?? null },
  );
}
