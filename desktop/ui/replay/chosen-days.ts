import type { DaySummary } from '../../../shared-types/log.ts';

/** Logged days that are over, the oldest first. The controller still writes today. */
function pastDays(days: readonly DaySummary[], today: string | undefined): readonly string[] {
  return days
    .map(({ day }) => day)
    .filter((day) => day !== today)
    .sort();
}

/** The newest logged days that are over, the oldest of them first. */
export function newestDays(
  days: readonly DaySummary[],
  today: string | undefined,
  count: number,
): readonly string[] {
  return count <= 0 ? [] : pastDays(days, today).slice(-count);
}

/** The logged days from one to another, both included, but for today. */
export function daysBetween(
  days: readonly DaySummary[],
  today: string | undefined,
  from: string,
  to: string,
): readonly string[] {
  return pastDays(days, today).filter((day) => from <= day && day <= to);
}

/** A whole number from 1 on that somebody typed; null when it is none. */
export function wholeNumber(typed: string): number | null {
  return /^\s*[1-9]\d{0,3}\s*$/.test(typed) ? Number(typed) : null;
}
