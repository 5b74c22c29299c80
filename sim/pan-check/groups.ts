import type { Stretch } from './stretches.ts';

/** Stretches of one day that is of use. */
export interface UsableDay {
  readonly day: string;
  readonly stretches: readonly Stretch[];
}

export interface Grouped {
  readonly reference: readonly UsableDay[];
  /** What is not the reference, in groups, rising; none where there are too few days. */
  readonly groups: readonly (readonly UsableDay[])[];
}

/** Days of a group: a week, in which weather has come and gone. */
const groupDays = 7;
/** Fewer days tell no group of their own. */
export const leastGroupDays = 3;

/**
 * Divides usable days into those that the others are compared with and groups of the others, counted back from the
 * newest, so that the newest group is whole.
 *
 * @param days - Rising. @param asked - Days of the reference; none: the oldest week, or half of all if that is less.
 */
export function groupedDays(days: readonly UsableDay[], asked: readonly string[]): Grouped {
  const oldest = days.slice(0, Math.min(groupDays, Math.floor(days.length / 2)));
  const reference = asked.length === 0 ? oldest : days.filter(({ day }) => asked.includes(day));
  const others = days.filter((one) => !reference.includes(one));
  const groups: (readonly UsableDay[])[] = [];
  for (let to = others.length; to >= leastGroupDays; ) {
    // What would be left alone goes with the oldest group.
    const from = to - groupDays < leastGroupDays ? 0 : to - groupDays;
    groups.unshift(others.slice(from, to));
    to = from;
  }
  return { reference, groups };
}
