import type { UsableDay } from './groups.ts';
import { type Reference, sumsOf } from './ratio.ts';
import { meanOf, studentHalfWidth, sureHalfWidths } from './student.ts';

/** Hours of the day in which a pan brings less than in its other hours, though it did not before. */
export interface Shade {
  readonly fromHour: number;
  readonly toHour: number;
  /** How much less, 0 to 1. */
  readonly lessFraction: number;
}

const binHours = 2;
/** A shade is told from so many days with such an hour, and from this size on. Design choices. */
const leastDays = 3;
const leastFraction = 0.08;

/**
 * The deepest shade of a group against the reference; undefined where none stands out.
 *
 * Each hour's heat over the expected is set against that of the other hours of the same days: what a day has all day, or
 * a pan at every hour, is no shade.
 */
export function shadeOf(
  group: readonly UsableDay[],
  before: readonly UsableDay[],
  reference: Reference,
): Shade | undefined {
  const then = dips(before, reference);
  let deepest: Shade | undefined;
  for (const [bin, now] of dips(group, reference)) {
    const was = then.get(bin);
    if (was === undefined || now.length < leastDays || was.length < leastDays) continue;
    const [a, b] = [meanOf(now), meanOf(was)];
    const lessFraction = b.mean - a.mean;
    const half =
      studentHalfWidth(Math.min(now.length, was.length) - 1) * Math.hypot(a.standardError, b.standardError);
    if (lessFraction < leastFraction || lessFraction < sureHalfWidths * half) continue;
    if (lessFraction <= (deepest?.lessFraction ?? 0)) continue;
    deepest = { fromHour: bin * binHours, toHour: (bin + 1) * binHours, lessFraction };
  }
  return deepest;
}

/** With less expected heat in sum, a ratio is mostly noise [W/m2]. A design choice. */
const leastExpected = 150;

/** By hours of the sun, on each day: the ratio of those hours less the ratio of all others of that day. */
function dips(days: readonly UsableDay[], { line, held }: Reference): Map<number, number[]> {
  const all = new Map<number, number[]>();
  for (const { day, stretches } of days) {
    const whole = sumsOf({ day, stretches }, line, held);
    const bins = Map.groupBy(stretches, ({ solarHour }) => Math.floor(solarHour / binHours));
    for (const [bin, own] of bins) {
      const here = sumsOf({ day, stretches: own }, line, held);
      const others = { gave: whole.gave - here.gave, expected: whole.expected - here.expected };
      if (here.expected <= leastExpected || others.expected <= leastExpected) continue;
      const list = all.get(bin) ?? [];
      list.push(here.gave / here.expected - others.gave / others.expected);
      all.set(bin, list);
    }
  }
  return all;
}
