const minuteMs = 60_000;
const dayMs = 1440 * minuteMs;

/** A minute that the clocks of a zone show: on one date, or the next time that they do. */
export interface LocalMoment {
  /** Such as 2031-06-21. */
  readonly date: string | null;
  readonly minuteOfDay: number;
}

/** `HH:MM`, or with a date `YYYY-MM-DDTHH:MM`. */
export const momentPattern = /^(?:(\d{4}-(?:0[1-9]|1[0-2])-\d{2})T)?([01]\d|2[0-3]):([0-5]\d)$/;

/** @returns undefined when the text is no such moment. */
export function parseMoment(text: string): LocalMoment | undefined {
  const [, date = null, hour, minute] = momentPattern.exec(text) ?? [];
  if (hour === undefined || (date !== null && !isDate(date))) return undefined;
  return { date, minuteOfDay: Number(hour) * 60 + Number(minute) };
}

/** A moment with a date, or the midnight that begins a date. @returns undefined when the text is neither. */
export function parseStart(text: string): LocalMoment | undefined {
  const moment = parseMoment(text.includes('T') ? text : `${text}T00:00`);
  return moment?.date == null ? undefined : moment;
}

/** False for days that no month has. */
function isDate(date: string): boolean {
  const atMs = Date.parse(date);
  return !Number.isNaN(atMs) && new Date(atMs).toISOString().startsWith(date);
}

/**
 * The instant of a moment in a zone [UTC ms]; without a date the first one that is not before the minute
 * that runs at `afterMs`.
 *
 * A minute that the clocks show twice is the first of both; one that they skip is as much later as they skip.
 */
export function instantOf({ date, minuteOfDay }: LocalMoment, afterMs: number, timeZone: string): number {
  const shownAt = shownIn(timeZone);
  if (date !== null) return instantShowing(Date.parse(date) + minuteOfDay * minuteMs, shownAt);
  const nowShowsMs = Math.floor(shownAt(afterMs) / minuteMs) * minuteMs;
  const today = Math.floor(nowShowsMs / dayMs) * dayMs + minuteOfDay * minuteMs;
  return instantShowing(today < nowShowsMs ? today + dayMs : today, shownAt);
}

/** What the clocks of a zone show, as if it were UTC. */
function shownIn(timeZone: string): (atMs: number) => number {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone,
    calendar: 'iso8601',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  return (atMs) => {
    const parts: Record<string, number> = {};
    for (const { type, value } of format.formatToParts(atMs)) parts[type] = Number(value);
    const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts;
    return Date.UTC(year, month - 1, day, hour, minute, second);
  };
}

function instantShowing(showsMs: number, shownAt: (atMs: number) => number): number {
  // The offset of half a day before is in force until a change; that of half a day after, from it on.
  const before = showsMs - dayMs / 2;
  const after = showsMs + dayMs / 2;
  const early = showsMs - (shownAt(before) - before);
  const late = showsMs - (shownAt(after) - after);
  return shownAt(early) === showsMs || shownAt(late) !== showsMs ? early : late;
}
