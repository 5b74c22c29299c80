import { instantsOf, type Zone, zoneOf } from '../weather/local-time.ts';

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
 *
 * @throws RangeError when the zone is unknown; a checked site names a known one.
 */
export function instantOf({ date, minuteOfDay }: LocalMoment, afterMs: number, timeZone: string): number {
  const zone = zoneOf(timeZone);
  if (zone === undefined) throw new RangeError(`${timeZone} is no time zone`);
  if (date !== null) return instantShowing(Date.parse(date) + minuteOfDay * minuteMs, zone);
  const nowShowsMs = Math.floor((afterMs + zone.offsetMs(afterMs)) / minuteMs) * minuteMs;
  const today = Math.floor(nowShowsMs / dayMs) * dayMs + minuteOfDay * minuteMs;
  return instantShowing(today < nowShowsMs ? today + dayMs : today, zone);
}

function instantShowing(showsMs: number, zone: Zone): number {
  // Where the clocks skip it, the offset that was in force before makes it as much later as they skip.
  return instantsOf(showsMs, zone)[0] ?? showsMs - zone.offsetMs(showsMs - dayMs);
}
