export const dayMs = 86_400_000;

export interface CivilDay {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
}

const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Whether the calendar of that year has the day. */
export function isCivilDay({ year, month, day }: CivilDay): boolean {
  const length = monthDays[month - 1];
  if (length === undefined || day < 1) return false;
  return day <= length || (month === 2 && day === 29 && isLeapYear(year));
}

/** Days from 1 January 1970 to a day of the Gregorian calendar; the year counted from March on. */
export function daysOf({ year, month, day }: CivilDay): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const dayOfMarchYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return 365 * marchYear + leapDays + dayOfMarchYear - 719_468;
}

/** The day of the Gregorian calendar so many days after 1 January 1970. */
export function civilDayOf(days: number): CivilDay {
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const inEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / 146_096)) / 365,
  );
  const dayOfYear = inEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

/** 1 to 366, with the time of day as a fraction. */
export function dayOfYear(atMs: number): number {
  const { year } = civilDayOf(Math.floor(atMs / dayMs));
  return 1 + atMs / dayMs - daysOf({ year, month: 1, day: 1 });
}
