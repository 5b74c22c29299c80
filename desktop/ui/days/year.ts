import type { DaySummary } from '../../../shared-types/log.ts';
import { type CalendarMonth, calendarMonth, heatOf } from './calendar.ts';

/** A year of the calendar with what came home in it. */
export interface CalendarYear {
  readonly year: string;
  readonly months: readonly CalendarMonth[];
  readonly heatHomeJ: number;
  readonly loggedDays: number;
  /** The day with the most heat home; undefined when none brought any. */
  readonly best: DaySummary | undefined;
}

export const yearOf = (day: string): string => day.slice(0, 4);

/** Years from the first logged one to the last, those between without a log too. */
export function yearsOf(days: readonly DaySummary[]): readonly string[] {
  const years = days.map(({ day }) => Number(yearOf(day)));
  if (years.length === 0) return [];
  const first = Math.min(...years);
  const count = Math.max(...years) - first + 1;
  return Array.from({ length: count }, (_, index) => String(first + index).padStart(4, '0'));
}

export function calendarYear(year: string, days: readonly DaySummary[]): CalendarYear {
  const months = Array.from({ length: 12 }, (_, index) =>
    calendarMonth(`${year}-${String(index + 1).padStart(2, '0')}`, days),
  );
  return {
    year,
    months,
    heatHomeJ: months.reduce((sum, month) => sum + month.heatHomeJ, 0),
    loggedDays: months.reduce((sum, month) => sum + month.loggedDays, 0),
    best: bestDay(days.filter(({ day }) => yearOf(day) === year)),
  };
}

function bestDay(days: readonly DaySummary[]): DaySummary | undefined {
  let best: DaySummary | undefined;
  for (const one of days) if (heatOf(one) > (best === undefined ? 0 : heatOf(best))) best = one;
  return best;
}

/** How far each key moves in a month whose weeks stand below each other [days]. */
const moves: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -7, ArrowDown: 7 };

/**
 * The logged day that a key leads to from another; undefined when the key leads nowhere. Where the very day
 * was not logged it is the next one in that direction.
 *
 * @param logged - Logged days that are shown, in order.
 */
export function dayByKey(logged: readonly string[], from: string, key: string): string | undefined {
  if (key === 'Home') return logged[0];
  if (key === 'End') return logged.at(-1);
  const count = moves[key];
  if (count === undefined) return undefined;
  const target = new Date(Date.parse(`${from}T00:00:00Z`) + count * 86_400_000).toISOString().slice(0, 10);
  return count > 0 ? logged.find((day) => day >= target) : logged.findLast((day) => day <= target);
}
