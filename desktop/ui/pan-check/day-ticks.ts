import { dayAfter, monthAfter, monthOf } from '../days/calendar.ts';

/** Spans longer than this are told by months [days]. A design choice. */
const mostDays = 120;
const monthSteps = [1, 2, 3, 6, 12] as const;
const dayMs = 86_400_000;

/** Whole days from one local day to another. */
export const daysApart = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / dayMs;

/**
 * Days that are named along a span, rising: of a long one the first day of months.
 *
 * @param most - As many names as there is room for, 1 at least.
 */
export function dayTicks(from: string, to: string, most: number): readonly string[] {
  const count = daysApart(from, to) + 1;
  if (count > mostDays) return monthTicks(from, to, most);
  const step = Math.ceil(count / most);
  return Array.from({ length: Math.ceil(count / step) }, (_, index) => dayAfter(from, index * step));
}

function monthTicks(from: string, to: string, most: number): readonly string[] {
  const first = from.endsWith('-01') ? monthOf(from) : monthAfter(monthOf(from), 1);
  const firsts: string[] = [];
  for (let month = first; `${month}-01` <= to; month = monthAfter(month, 1)) firsts.push(`${month}-01`);
  const step = monthSteps.find((one) => firsts.length / one <= most) ?? 12;
  return firsts.filter((_, index) => index % step === 0);
}

/** Whether the names of a span are those of months. */
export const namesMonths = (from: string, to: string): boolean => daysApart(from, to) + 1 > mostDays;
