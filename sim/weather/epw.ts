import type { Site } from '../../shared-types/site.ts';
import { dayMs, daysOf, isCivilDay } from './calendar.ts';
import { type CsvRow, readCsvTable } from './csv-table.ts';
import { type EpwPlace, epwColumns, epwMinutes, epwPlace, epwValues, leastEpwColumns } from './epw-lines.ts';
import { type FileRow, placeRows } from './file-series.ts';
import { createRepairs, type Repairs } from './repairs.ts';
import { weatherOfSeries } from './series-weather.ts';
import type { WeatherFault, WeatherFile } from './weather-file.ts';

/** All rows of a typical year stand in this one, whose calendar has no 29 February. */
const typicalYear = 2001;
const mostFaults = 20;

/**
 * Reads an EnergyPlus weather file. The sun stands where the file's own LOCATION line puts it; a site further
 * away than a degree or two is named among the repairs.
 *
 * Values: LOCATION gives the hours ahead of UTC; a row ends its interval; 29 February is left out; the years of
 * single months do not count. Format: EnergyPlus Auxiliary Programs, EPW data dictionary.
 */
export function readEpw(text: string, location: Site['location']): WeatherFile {
  const table = readCsvTable(text);
  if (!table.ok) return { ok: false, faults: [table.fault] };
  const [first] = table.rows;
  if (first?.cells[0]?.toUpperCase() !== 'LOCATION') return failed({ cause: 'no-location', line: 1 });
  const place = epwPlace(first);
  if (!('zoneH' in place)) return failed(place);
  const repairs = createRepairs();
  if (isElsewhere(place, location)) repairs.note('place-differs', first.line);
  const headerEnd = table.rows.findIndex(({ cells }) => cells[0]?.toUpperCase() === 'DATA PERIODS');
  const data = headerEnd < 0 ? [] : table.rows.slice(headerEnd + 1);
  if (data.length === 0) return failed({ cause: 'no-rows', line: table.rows.at(-1)?.line ?? 1 });
  const perHour = Number(table.rows[headerEnd]?.cells[2] ?? 1);
  if (![1, 2, 3, 4, 6, 12, 60].includes(perHour)) {
    const text = table.rows[headerEnd]?.cells[2] ?? '';
    return failed({ cause: 'bad-number', line: table.rows[headerEnd]?.line ?? 1, column: 3, text });
  }
  const rows = rowsOf(data, perHour, repairs);
  if ('faults' in rows) return { ok: false, faults: rows.faults };
  const grid = {
    offsetMs: place.zoneH * 3_600_000,
    startMs: daysOf({ year: typicalYear, month: 1, day: 1 }) * dayMs,
    stepMs: 3_600_000 / perHour,
    count: 8760 * perHour,
  };
  const series = placeRows(
    rows.rows,
    grid,
    epwColumns.map(({ quantity }) => quantity),
    repairs,
  );
  return 'cause' in series ? failed(series) : weatherOfSeries(series, place, repairs);
}

function failed(fault: WeatherFault): WeatherFile {
  return { ok: false, faults: [fault] };
}

/** Further off than a file of the region may be: a degree of latitude, a degree and a half of longitude, 300 m. */
function isElsewhere(place: EpwPlace, location: Site['location']): boolean {
  const turn = Math.abs(place.longitudeDeg - location.longitudeDeg);
  return (
    Math.abs(place.latitudeDeg - location.latitudeDeg) > 1 ||
    Math.min(turn, 360 - turn) > 1.5 ||
    Math.abs(place.elevationM - location.elevationM) > 300
  );
}

function rowsOf(
  data: readonly CsvRow[],
  perHour: number,
  repairs: Repairs,
): { readonly rows: readonly FileRow[] } | { readonly faults: readonly WeatherFault[] } {
  const rows: FileRow[] = [];
  const faults: WeatherFault[] = [];
  for (const row of data) {
    if (faults.length >= mostFaults) break;
    const { line, cells } = row;
    if (cells.length < leastEpwColumns) {
      faults.push({ cause: 'too-few-columns', line, seen: cells.length, needed: leastEpwColumns });
      continue;
    }
    const [month, day] = [Number(cells[1]), Number(cells[2])];
    const minutes = epwMinutes(row, perHour);
    if (typeof minutes !== 'number') {
      faults.push(minutes);
      continue;
    }
    // A leap day must be one in some year.
    if (!isCivilDay({ year: 2000, month, day })) {
      faults.push({ cause: 'bad-time', line, column: 2, text: `${cells[1]}/${cells[2]}` });
      continue;
    }
    if (month === 2 && day === 29) {
      repairs.note('leap-day-left-out', line);
      continue;
    }
    const values = epwValues(row, faults);
    const startMs = daysOf({ year: typicalYear, month, day }) * dayMs;
    rows.push({ line, endMs: startMs + minutes * 60_000, values });
  }
  return faults.length > 0 ? { faults } : { rows };
}
