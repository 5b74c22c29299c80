import type { PanBlock, PanCheck } from '../../../shared-types/pan-check.ts';
import type { Estimate } from '../../../shared-types/tuning.ts';
import { type DrawnBox, type Scale, scaleOf } from './chart-box.ts';
import { daysApart, dayTicks } from './day-ticks.ts';
import { allBlocks, isReferenceDay } from './pan-groups.ts';

interface Upright {
  readonly y: number;
  readonly lowY: number;
  readonly highY: number;
}

export interface DrawnDay extends Upright {
  readonly x: number;
  readonly reference: boolean;
}

export interface DrawnGroup extends Upright {
  readonly fromX: number;
  readonly toX: number;
}

/** Ratios of days and of groups of them as places of a drawing. */
export interface DayOutline {
  readonly levels: Scale['levels'];
  /** Where the reference itself stands. */
  readonly oneY: number;
  readonly days: readonly DrawnDay[];
  /** The reference first. */
  readonly groups: readonly DrawnGroup[];
  readonly ticks: readonly { readonly day: string; readonly x: number }[];
  /** Room of a day [px]. */
  readonly dayPx: number;
}

/** The scale ends at whole twentieths. */
const levelStep = 0.05;
/** A band of a day that tells next to nothing is cut here, or it would press all others together. A design choice. */
const shownBand = { least: 0.4, most: 1.6 } as const;
/** Room that the name of a day needs [px]. */
const tickPx = 96;

/** @param box - Its width is shared evenly by all days from the first to the last, those without heat too. */
export function dayOutline(
  check: Pick<PanCheck, 'reference' | 'blocks' | 'days'>,
  box: DrawnBox,
): DayOutline {
  const blocks = allBlocks(check);
  const [from, to] = wholeSpan(check);
  const dayPx = box.width / (daysApart(from, to) + 1);
  const x = (day: string) => box.left + daysApart(from, day) * dayPx;
  const { levels, y } = scaleOf([...check.days, ...blocks].flatMap(shownEnds), levelStep, box);
  const upright = ({ ratio: { value, low, high } }: { readonly ratio: Estimate }): Upright => ({
    y: y(value),
    lowY: y(low),
    highY: y(high),
  });
  return {
    levels,
    oneY: y(1),
    days: check.days.map((one) => ({
      ...upright(one),
      x: x(one.day) + dayPx / 2,
      reference: isReferenceDay(check, one.day),
    })),
    groups: blocks.map((one) => ({
      ...upright(one),
      fromX: x(one.fromDay),
      toX: x(one.toDay) + dayPx,
    })),
    ticks: dayTicks(from, to, Math.max(1, Math.floor(box.width / tickPx))).map((day) => ({
      day,
      x: x(day) + dayPx / 2,
    })),
    dayPx,
  };
}

/** The first and the last day of anything that is drawn. */
export function wholeSpan(check: Pick<PanCheck, 'reference' | 'blocks' | 'days'>): readonly [string, string] {
  const ends = (block: PanBlock) => [block.fromDay, block.toDay];
  const all = [...check.days.map(({ day }) => day), ...allBlocks(check).flatMap(ends)].sort();
  return [all[0] ?? '', all.at(-1) ?? ''];
}

/** All of a value, and of its band what is shown. */
function shownEnds({ ratio: { value, low, high } }: { readonly ratio: Estimate }): readonly number[] {
  return [value, Math.max(low, shownBand.least), Math.min(high, shownBand.most)];
}
