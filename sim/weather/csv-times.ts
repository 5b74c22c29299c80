import type { CsvRow } from './csv-table.ts';
import { instantsOf, parseWrittenTime, type Zone, zoneOf } from './local-time.ts';
import type { Repairs } from './repairs.ts';
import type { WeatherCsvMap } from './weather-csv-map.ts';
import type { WeatherFault } from './weather-file.ts';

export interface TimedRow extends CsvRow {
  readonly utcMs: number;
}

const mostFaults = 20;

/**
 * The instants of the rows. A time with an offset is an instant. A local time that the clocks repeat is the first
 * instant, or the second when a row before it has reached the first; one that they skip is read as if they had
 * not been put forward. Both are counted.
 */
export function timedRows(
  rows: readonly CsvRow[],
  timeIndex: number,
  { zone: zoneName }: WeatherCsvMap['time'],
  repairs: Repairs,
): readonly TimedRow[] | { readonly faults: readonly WeatherFault[] } {
  const zone = zoneName === undefined ? undefined : zoneOf(zoneName);
  if (zoneName !== undefined && zone === undefined)
    return { faults: [{ cause: 'bad-zone', zone: zoneName }] };
  const timed: TimedRow[] = [];
  const faults: WeatherFault[] = [];
  let lastMs = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    const text = row.cells[timeIndex] ?? '';
    const utcMs = instantOf(text, zone, lastMs, row.line, repairs);
    if (utcMs === undefined) {
      faults.push({ cause: 'bad-time', line: row.line, column: timeIndex + 1, text });
      if (faults.length >= mostFaults) break;
      continue;
    }
    lastMs = utcMs;
    timed.push({ ...row, utcMs });
  }
  return faults.length > 0 ? { faults } : timed;
}

function instantOf(
  text: string,
  zone: Zone | undefined,
  lastMs: number,
  line: number,
  repairs: Repairs,
): number | undefined {
  const written = parseWrittenTime(text);
  if (written === undefined) return undefined;
  const { clockMs, offsetMs } = written;
  if (offsetMs !== undefined) return clockMs - offsetMs;
  if (zone === undefined) return undefined;
  const [first, second] = instantsOf(clockMs, zone);
  if (first === undefined) {
    repairs.note('clock-hour-skipped', line);
    return clockMs - zone.offsetMs(clockMs - 86_400_000);
  }
  if (second === undefined) return first;
  repairs.note('clock-hour-repeated', line);
  return lastMs >= first ? second : first;
}

/** The usual distance of neighbouring rows [ms]: the middle one of all that are not 0. Undefined without any. */
export function usualStepMs(rows: readonly TimedRow[]): number | undefined {
  const sorted = rows.map(({ utcMs }) => utcMs).sort((a, b) => a - b);
  const steps = sorted
    .slice(1)
    .map((utcMs, i) => utcMs - (sorted[i] as number))
    .filter((step) => step > 0)
    .sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)];
}
