import type { Site } from '../../../shared-types/site.ts';

/**
 * True when frost is possible on that day; without a season, or without a day, always.
 *
 * @param localDay - Day of the site such as 2031-06-21; both ends of the season belong to it.
 */
export function isInFrostSeason({ frostSeason }: Site, localDay: string | null): boolean {
  if (frostSeason === undefined || localDay === null) return true;
  const { from, to } = frostSeason;
  const day = localDay.slice(5);
  return from <= to ? day >= from && day <= to : day >= from || day <= to;
}

/** Days before each month of a year without a leap day. */
const daysBefore = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
const yearDays = 365;

/** @param monthDay - Such as 06-21: a day that was checked. */
function dayOfYear(monthDay: string): number {
  return (daysBefore[Number(monthDay.slice(0, 2)) - 1] as number) + Number(monthDay.slice(3, 5));
}

/** Days from that day to the beginning of the season, 0 to 364; null without a season or a day. */
export function daysToFrostSeason({ frostSeason }: Site, localDay: string | null): number | null {
  if (frostSeason === undefined || localDay === null) return null;
  return (dayOfYear(frostSeason.from) - dayOfYear(localDay.slice(5)) + yearDays) % yearDays;
}
