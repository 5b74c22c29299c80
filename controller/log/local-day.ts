const dayMs = 86_400_000;

/** A zone's calendar. `dayOf` gives the local day of an instant, such as 2031-06-21. */
export interface LocalDays {
  dayOf(atMs: number): string;
  /** UTC instants at which a local day begins and the next one begins [ms]. */
  boundsOf(day: string): { readonly fromMs: number; readonly toMs: number };
}

/**
 * Local days of an IANA time zone.
 *
 * @throws RangeError when the zone is unknown; a checked site names a known one.
 */
export function localDaysOf(timeZone: string): LocalDays {
  // Making a formatter costs a hundred times more than using it.
  const formatter = new Intl.DateTimeFormat('en-US', {
    timeZone,
    calendar: 'iso8601',
    numberingSystem: 'latn',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const dayOf = (atMs: number) => {
    const parts: Record<string, string> = {};
    for (const { type, value } of formatter.formatToParts(atMs)) parts[type] = value;
    return `${parts['year']?.padStart(4, '0')}-${parts['month']}-${parts['day']}`;
  };
  const boundsOf = (day: string) => ({
    fromMs: firstInstantOf(day, dayOf),
    toMs: firstInstantOf(nextDay(day), dayOf),
  });
  return { dayOf, boundsOf };
}

/** Halves the span in which a local midnight can lie: no zone is further than 15 hours from UTC. */
function firstInstantOf(day: string, dayOf: (atMs: number) => string): number {
  const utcMs = Date.parse(`${day}T00:00:00Z`);
  let before = utcMs - dayMs;
  let after = utcMs + dayMs;
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (dayOf(middle) >= day) after = middle;
    else before = middle;
  }
  return after;
}

const nextDay = (day: string) => new Date(Date.parse(`${day}T00:00:00Z`) + dayMs).toISOString().slice(0, 10);
