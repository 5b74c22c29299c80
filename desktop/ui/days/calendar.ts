import type { DaySummary } from '../../../shared-types/log.ts';

/** A cell of a month: a day with what was logged on it, if anything was. */
export interface CalendarCell {
  readonly day: string;
  readonly dayOfMonth: number;
  readonly summary: DaySummary | undefined;
  /** True when it lies between logged days and is missing from the log. */
  readonly missing: boolean;
  /** Height of its bar, 0 to 1, of the best day among all that are shown. */
  readonly bar: number;
}

export interface CalendarMonth {
  /** In the form 2031-06. */
  readonly month: string;
  /** Weeks from Monday on; null where the week belongs to another month. */
  readonly weeks: readonly (readonly (CalendarCell | null)[])[];
  readonly heatHomeJ: number;
  readonly loggedDays: number;
}

const dayMs = 86_400_000;
const two = (value: number) => String(value).padStart(2, '0');

/** A day whose heat nobody can tell adds nothing to a sum [J]. */
export const heatOf = (summary: DaySummary): number => summary.heatHomeJ ?? 0;

/** The month of a day. */
export const monthOf = (day: string): string => day.slice(0, 7);

/** The month that lies `count` months later (earlier when negative). */
export function monthAfter(month: string, count: number): string {
  const [year, one] = month.split('-').map(Number) as [number, number];
  const moved = new Date(Date.UTC(year, one - 1 + count, 1));
  return `${String(moved.getUTCFullYear()).padStart(4, '0')}-${two(moved.getUTCMonth() + 1)}`;
}

/** The local day that lies `count` days later (earlier when negative). */
export function dayAfter(day: string, count: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + count * dayMs).toISOString().slice(0, 10);
}

/** A month as weeks of cells. */
export function calendarMonth(month: string, days: readonly DaySummary[]): CalendarMonth {
  const known = new Map(days.map((summary) => [summary.day, summary]));
  const bestJ = Math.max(0, ...days.map(heatOf));
  const names = days.map((summary) => summary.day).sort();
  const first = names[0] ?? '';
  const last = names.at(-1) ?? '';
  const firstMs = Date.parse(`${month}-01T00:00:00Z`);
  const count = (Date.parse(`${monthAfter(month, 1)}-01T00:00:00Z`) - firstMs) / dayMs;
  const cells = Array.from({ length: count }, (_, index): CalendarCell => {
    const day = `${month}-${two(index + 1)}`;
    const summary = known.get(day);
    const bar = summary === undefined || bestJ === 0 ? 0 : Math.max(0, heatOf(summary)) / bestJ;
    const missing = summary === undefined && day > first && day < last;
    return { day, dayOfMonth: index + 1, summary, missing, bar };
  });
  const logged = cells.flatMap((cell) => cell.summary ?? []);
  return {
    month,
    weeks: weeksOf(cells, (new Date(firstMs).getUTCDay() + 6) % 7),
    heatHomeJ: logged.reduce((sum, summary) => sum + heatOf(summary), 0),
    loggedDays: logged.length,
  };
}

function weeksOf(cells: readonly CalendarCell[], daysBefore: number): (CalendarCell | null)[][] {
  const padded = [...Array<null>(daysBefore).fill(null), ...cells];
  while (padded.length % 7 !== 0) padded.push(null);
  return Array.from({ length: padded.length / 7 }, (_, week) => padded.slice(week * 7, week * 7 + 7));
}

/** Share of a day that has to be logged for it to count as complete. */
const completeFraction = 0.95;

/**
 * The day that a replay offers first: the newest complete one, else the newest that is over, else
 * the newest.
 *
 * @param today - Local day that the controller still writes.
 */
export function newestComplete(days: readonly DaySummary[], today: string | undefined): string | undefined {
  const newestFirst = [...days].sort((a, b) => b.day.localeCompare(a.day));
  const over = newestFirst.filter((summary) => summary.day !== today);
  const complete = over.find((summary) => summary.coveredFraction >= completeFraction);
  return (complete ?? over[0] ?? newestFirst[0])?.day;
}
