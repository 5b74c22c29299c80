/** Steps between two ticks of a time axis [minutes]. */
const stepsMin = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440];
const minuteMs = 60_000;

/**
 * Instants for the ticks of a time axis, at round times of the site's own clock.
 *
 * @param offsetMs - Local time minus UTC at an instant; a span over a clock change keeps round times.
 * @param most - Most ticks that there is room for.
 */
export function timeTicks(
  fromMs: number,
  toMs: number,
  most: number,
  offsetMs: (atMs: number) => number,
): readonly number[] {
  const spanMin = (toMs - fromMs) / minuteMs;
  const stepMin = stepsMin.find((step) => spanMin / step <= most) ?? 1440 * Math.ceil(spanMin / 1440 / most);
  const ticks: number[] = [];
  // Every quarter of an hour is a candidate where the step is longer: clock changes move by those.
  const candidateMs = Math.min(stepMin, 15) * minuteMs;
  for (let atMs = Math.ceil(fromMs / candidateMs) * candidateMs; atMs <= toMs; atMs += candidateMs) {
    const localMin = Math.round((atMs + offsetMs(atMs)) / minuteMs);
    if (localMin % stepMin === 0) ticks.push(atMs);
  }
  return ticks;
}

/** Room that a label needs beside the next, and half a label with a bit more [px]. */
const labelPx = 70;
const halfLabelPx = 22;

/**
 * Ticks of an axis that is so wide [px]. None stands so near to the end that the library would keep room for half its
 * label beside the curves: the ribbon below them would then no longer lie under its instants.
 */
export function ticksOn(
  { min, max, width }: { readonly min: number; readonly max: number; readonly width: number },
  offsetMs: (atMs: number) => number,
): readonly number[] {
  const lastMs = max - (halfLabelPx / Math.max(1, width)) * (max - min);
  return timeTicks(min, lastMs, Math.max(2, Math.floor(width / labelPx)), offsetMs);
}

const offsets = new Map<string, (atMs: number) => number>();

/** Local time minus UTC of a zone, as a function that remembers each quarter of an hour it was asked for [ms]. */
export function zoneOffset(timeZone: string): (atMs: number) => number {
  const before = offsets.get(timeZone);
  if (before !== undefined) return before;
  const made = rememberedOffset(timeZone);
  offsets.set(timeZone, made);
  return made;
}

function rememberedOffset(timeZone: string): (atMs: number) => number {
  const format = new Intl.DateTimeFormat('en', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  });
  const known = new Map<number, number>();
  return (atMs) => {
    // Zones change their offset at full quarters of an hour.
    const quarterMs = Math.floor(atMs / (15 * minuteMs)) * 15 * minuteMs;
    const before = known.get(quarterMs);
    if (before !== undefined) return before;
    const part = Object.fromEntries(
      format.formatToParts(quarterMs).map(({ type, value }) => [type, Number(value)]),
    );
    const { year = 1970, month = 1, day = 1, hour = 0, minute = 0 } = part as Record<string, number>;
    const offset = Date.UTC(year, month - 1, day, hour, minute) - quarterMs;
    known.set(quarterMs, offset);
    return offset;
  };
}
