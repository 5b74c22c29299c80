import type { Site } from '../../shared-types/site.ts';
import { dayMs } from './calendar.ts';
import { type CsvLayout, csvLayout, csvValues } from './csv-columns.ts';
import { type CsvRow, readCsvTable } from './csv-table.ts';
import { timedRows, usualStepMs } from './csv-times.ts';
import { type FileRow, placeRows } from './file-series.ts';
import { createRepairs, type Repairs } from './repairs.ts';
import { weatherOfSeries } from './series-weather.ts';
import type { WeatherCsvMap } from './weather-csv-map.ts';
import type { WeatherFault, WeatherFile } from './weather-file.ts';

export { type WeatherCsvMap, weatherCsvMapSchema } from './weather-csv-map.ts';

const mostFaults = 20;
const mostRows = 1_100_000;

/**
 * Reads weather in CSV by a map of its columns. Rows stand at even steps that divide a day; the usual distance
 * of neighbours is the step.
 *
 * Errors: values, no exceptions. What was mended is counted in `repairs`.
 */
export function readWeatherCsv(text: string, map: WeatherCsvMap, location: Site['location']): WeatherFile {
  const table = readCsvTable(text);
  if (!table.ok) return { ok: false, faults: [table.fault] };
  const [header, ...rows] = table.rows;
  if (header === undefined || rows.length < 2)
    return { ok: false, faults: [{ cause: 'no-rows', line: table.rows.at(-1)?.line ?? 1 }] };
  const layout = csvLayout(header.cells, map);
  if (!('columns' in layout)) return { ok: false, faults: layout };
  return weatherOfRows(rows, layout, map, location, createRepairs());
}

function weatherOfRows(
  rows: readonly CsvRow[],
  layout: CsvLayout,
  map: WeatherCsvMap,
  location: Site['location'],
  repairs: Repairs,
): WeatherFile {
  const timed = timedRows(rows, layout.timeIndex, map.time, repairs);
  if ('faults' in timed) return { ok: false, faults: timed.faults };
  const stepMs = usualStepMs(timed);
  const line = rows[0]?.line ?? 1;
  if (stepMs === undefined) return { ok: false, faults: [{ cause: 'no-rows', line }] };
  const faults: WeatherFault[] = [];
  const lateMs = map.time.marks === 'end' ? 0 : stepMs;
  const placed: FileRow[] = [];
  let firstEndMs = Number.POSITIVE_INFINITY;
  let lastEndMs = Number.NEGATIVE_INFINITY;
  for (const row of timed) {
    const endMs = row.utcMs + lateMs;
    firstEndMs = Math.min(firstEndMs, endMs);
    lastEndMs = Math.max(lastEndMs, endMs);
    placed.push({
      line: row.line,
      endMs,
      values: csvValues(row.line, row.cells, layout, stepMs / 1000, faults),
    });
    if (faults.length >= mostFaults) break;
  }
  const count = Math.round((lastEndMs - firstEndMs) / stepMs) + 1;
  if (faults.length === 0 && (dayMs % stepMs !== 0 || count > mostRows))
    faults.push({ cause: 'uneven-steps', line, stepMs });
  if (faults.length > 0) return { ok: false, faults };
  const grid = { offsetMs: 0, startMs: firstEndMs - stepMs, stepMs, count };
  const quantities = layout.columns.map(({ quantity }) => quantity);
  const series = placeRows(placed, grid, quantities, repairs);
  return 'cause' in series ? { ok: false, faults: [series] } : weatherOfSeries(series, location, repairs);
}
