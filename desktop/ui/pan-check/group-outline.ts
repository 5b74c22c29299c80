import type { Estimate } from '../../../shared-types/tuning.ts';
import { type DrawnBox, type Scale, scaleOf } from './chart-box.ts';

/** Where a group stands; null where it does not tell the value. */
interface DrawnPoint {
  readonly index: number;
  readonly x: number;
  readonly shown: { readonly y: number; readonly lowY: number; readonly highY: number } | null;
}

/** One coefficient from group to group. */
export interface GroupOutline {
  readonly levels: Scale['levels'];
  readonly points: readonly DrawnPoint[];
  /** Groups that are named below, the first among them. */
  readonly named: readonly number[];
}

/** Room that a name below needs [px]. */
const namePx = 68;

/**
 * @param estimates - One at least of them is there.
 * @param step - See {@link scaleOf}.
 */
export function groupOutline(
  estimates: readonly (Estimate | null)[],
  step: number,
  box: DrawnBox,
): GroupOutline {
  const there = estimates.filter((one) => one !== null);
  const { levels, y } = scaleOf(
    there.flatMap(({ value, low, high }) => [value, low, high]),
    step,
    box,
  );
  const room = box.width / estimates.length;
  const every = Math.max(1, Math.ceil(namePx / room));
  return {
    levels,
    points: estimates.map((one, index) => ({
      index,
      x: box.left + (index + 0.5) * room,
      shown: one === null ? null : { y: y(one.value), lowY: y(one.low), highY: y(one.high) },
    })),
    named: estimates.map((_, index) => index).filter((index) => index % every === 0),
  };
}
