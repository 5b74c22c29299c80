/** Times as a person at the site reads them: in the site's zone, in the reader's locale. */
export interface TimeFormats {
  /** 14:05 */
  clock(atMs: number): string;
  /** 14:05:20 */
  clockWithSeconds(atMs: number): string;
  /** Sat 21 June 2031, 14:05 */
  instant(atMs: number): string;
  /** The clock on the day of `nowMs`, else with the day as well: 14:05, or Sat 21 Jun, 14:05. */
  moment(atMs: number, nowMs: number): string;
  /** Saturday, 21 June 2031, of a local day in the form 2031-06-21. */
  day(day: string): string;
  /** Sat 21 June */
  shortDay(day: string): string;
  /** 15 October, of a month and day in the form 10-15. */
  dayOfYear(monthDay: string): string;
  /** June 2031, of a month in the form 2031-06. */
  month(month: string): string;
  /** Names of the week's days from Monday on. */
  weekdays(): readonly { readonly short: string; readonly long: string }[];
}

/** From here on a day and a month alone might be taken for another year's [ms]. */
const longMs = 300 * 86_400_000;

const known = new Map<string, TimeFormats>();

/** Times of a zone for one locale (undefined: the browser's); made once, since each format is dear to make. */
export function timeFormats(timeZone: string, locale?: string): TimeFormats {
  const key = `${timeZone} ${locale}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const made = makeFormats(timeZone, locale);
  known.set(key, made);
  return made;
}

function makeFormats(timeZone: string, locale: string | undefined): TimeFormats {
  const at = (options: Intl.DateTimeFormatOptions, zone = timeZone) => {
    const format = new Intl.DateTimeFormat(locale, { hourCycle: 'h23', ...options, timeZone: zone });
    return (ms: number) => format.format(ms);
  };
  // A local day is a name, not an instant: it is shown as the same day everywhere.
  const dayText = (options: Intl.DateTimeFormatOptions) => {
    const format = at(options, 'UTC');
    return (day: string) => format(Date.parse(`${day.length === 7 ? `${day}-01` : day}T00:00:00Z`));
  };
  // A leap year, since the 29th of February is a day of the year as well.
  const dayAndMonth = dayText({ day: 'numeric', month: 'long' });
  const monday = Date.UTC(2024, 0, 1);
  const short = at({ weekday: 'short' }, 'UTC');
  const long = at({ weekday: 'long' }, 'UTC');
  const clock = at({ hour: '2-digit', minute: '2-digit' });
  const dayName = at({ year: 'numeric', month: 'numeric', day: 'numeric' });
  const dayAndClock = at({
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
  });
  const instant = at({
    weekday: 'short',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  });
  return {
    clock,
    clockWithSeconds: at({ hour: '2-digit', minute: '2-digit', second: '2-digit' }),
    instant,
    moment(atMs, nowMs) {
      if (dayName(atMs) === dayName(nowMs)) return clock(atMs);
      return Math.abs(nowMs - atMs) < longMs ? dayAndClock(atMs) : instant(atMs);
    },
    day: dayText({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }),
    shortDay: dayText({ weekday: 'short', day: 'numeric', month: 'short' }),
    dayOfYear: (monthDay) => dayAndMonth(`2024-${monthDay}`),
    month: dayText({ month: 'long', year: 'numeric' }),
    weekdays: () =>
      Array.from({ length: 7 }, (_, index) => monday + index * 86_400_000).map((ms) => ({
        short: short(ms),
        long: long(ms),
      })),
  };
}

const dayFormats = new Map<string, Intl.DateTimeFormat>();

/** Made once for a zone: making a format costs a hundred times more than using it. */
function dayFormat(timeZone: string): Intl.DateTimeFormat {
  const before = dayFormats.get(timeZone);
  if (before !== undefined) return before;
  const made = new Intl.DateTimeFormat('en', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  dayFormats.set(timeZone, made);
  return made;
}

/** Local calendar day of an instant in a zone, in the form 2031-06-21. */
export function localDayOf(atMs: number, timeZone: string): string {
  const parts = dayFormat(timeZone).formatToParts(atMs);
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? '';
  return `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
}

/** A length of time in at most two units: 45 s, 12 min, 3 h 05 min, 2 d 4 h. */
export function durationText(durationMs: number): string {
  const seconds = Math.max(0, Math.round(durationMs / 1000));
  if (seconds < 60) return `${seconds}\u00a0s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes}\u00a0min`;
  const hours = Math.floor(minutes / 60);
  if (hours < 24) return `${hours}\u00a0h ${String(minutes % 60).padStart(2, '0')}\u00a0min`;
  return `${Math.floor(hours / 24)}\u00a0d ${hours % 24}\u00a0h`;
}
