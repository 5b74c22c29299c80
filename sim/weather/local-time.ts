import { dayMs, daysOf, isCivilDay } from './calendar.ts';

const hourMs = 3_600_000;

/** Clock time on its own calendar, as milliseconds since 1970 on that clock, with the offset if it was written. */
export interface WrittenTime {
  readonly clockMs: number;
  /** Ahead of UTC [ms]. */
  readonly offsetMs: number | undefined;
}

const pattern =
  /^(\d{4})-(\d{2})-(\d{2})[Tt ](\d{2}):(\d{2})(?::(\d{2})(\.\d+)?)?(Z|z|([+-])(\d{2}):(\d{2}))?$/;

/** RFC 3339, or the same without its offset and seconds. Undefined for anything else, 24:00 and leap seconds too. */
export function parseWrittenTime(text: string): WrittenTime | undefined {
  const match = pattern.exec(text);
  if (match === null) return undefined;
  const part = (index: number) => Number(match[index] ?? 0);
  const day = { year: part(1), month: part(2), day: part(3) };
  if (!isCivilDay(day) || part(4) > 23 || part(5) > 59 || part(6) > 59) return undefined;
  if (part(10) > 23 || part(11) > 59) return undefined;
  const clockMs =
    daysOf(day) * dayMs + part(4) * hourMs + part(5) * 60_000 + part(6) * 1000 + Math.round(part(7) * 1000);
  if (match[8] === undefined) return { clockMs, offsetMs: undefined };
  const sign = match[9] === '-' ? -1 : 1;
  return { clockMs, offsetMs: sign * (part(10) * hourMs + part(11) * 60_000) };
}

export interface Zone {
  /** The zone's clocks ahead of UTC at an instant [ms]. */
  offsetMs(utcMs: number): number;
}

/** A zone of the IANA list; undefined when the machine does not know it. */
export function zoneOf(name: string): Zone | undefined {
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat('en-US', {
      timeZone: name,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return undefined;
  }
  const kept = new Map<number, number>();
  const computed = (utcMs: number) => {
    const parts = format.formatToParts(utcMs);
    const part = (type: string) => Number(parts.find((one) => one.type === type)?.value ?? 0);
    const days = daysOf({ year: part('year'), month: part('month'), day: part('day') });
    return days * dayMs + part('hour') * hourMs + part('minute') * 60_000 + part('second') * 1000 - utcMs;
  };
  return {
    // No zone changes its clocks within a quarter of an hour of UTC twice.
    offsetMs(utcMs) {
      const quarterMs = Math.floor(utcMs / 900_000) * 900_000;
      const known = kept.get(quarterMs);
      if (known !== undefined) return known;
      const offset = computed(quarterMs);
      kept.set(quarterMs, offset);
      return offset;
    },
  };
}

/** Instants at which a zone's clocks show a time: one, none when the clocks skip it, two when they repeat it. */
export function instantsOf(clockMs: number, zone: Zone): readonly number[] {
  const offsets = new Set([zone.offsetMs(clockMs - dayMs), zone.offsetMs(clockMs + dayMs)]);
  return [...offsets]
    .map((offset) => clockMs - offset)
    .filter((utcMs) => utcMs + zone.offsetMs(utcMs) === clockMs)
    .sort((a, b) => a - b);
}
