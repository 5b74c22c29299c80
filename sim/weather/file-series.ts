import type { Repairs } from './repairs.ts';
import type { FileQuantity, WeatherFault } from './weather-file.ts';

/** Values of a row by quantity; absent or NaN when the file has none. */
export type FileValues = Partial<Record<FileQuantity, number>>;

export interface FileRow {
  readonly line: number;
  /** End of the interval that the row stands for, on the clock of the file [ms since 1970]. */
  readonly endMs: number;
  readonly values: FileValues;
}

/** A weather file on an even grid. NaN: not known. */
export interface FileSeries {
  /** The file's clock ahead of UTC [ms]. */
  readonly offsetMs: number;
  /** Start of the first interval on the file's clock [ms since 1970]. */
  readonly startMs: number;
  readonly stepMs: number;
  readonly count: number;
  /** Line of each row; of the next one that is there for a row that is missing. */
  readonly lines: readonly number[];
  readonly columns: Partial<Record<FileQuantity, Float64Array>>;
}

export interface Grid {
  readonly offsetMs: number;
  readonly startMs: number;
  readonly stepMs: number;
  readonly count: number;
}

/** Puts rows onto the grid: in order, the first of doubles kept, room left where rows are missing. */
export function placeRows(
  rows: readonly FileRow[],
  grid: Grid,
  quantities: readonly FileQuantity[],
  repairs: Repairs,
): FileSeries | WeatherFault {
  const lines = new Array<number>(grid.count).fill(0);
  const columns = Object.fromEntries(
    quantities.map((quantity) => [quantity, new Float64Array(grid.count).fill(Number.NaN)]),
  ) as Partial<Record<FileQuantity, Float64Array>>;
  let last = -1;
  for (const { line, endMs, values } of rows) {
    const place = (endMs - grid.startMs) / grid.stepMs - 1;
    const index = Math.round(place);
    if (Math.abs(place - index) > 1e-6) return { cause: 'uneven-steps', line, stepMs: grid.stepMs };
    if (index < 0 || index >= grid.count) continue;
    if (lines[index] !== 0) {
      repairs.note('row-duplicated', line);
      continue;
    }
    if (index < last) repairs.note('row-out-of-order', line);
    last = Math.max(last, index);
    lines[index] = line;
    for (const quantity of quantities) {
      const column = columns[quantity];
      if (column !== undefined) column[index] = values[quantity] ?? Number.NaN;
    }
  }
  nameMissing(lines, repairs);
  return { ...grid, lines, columns };
}

function nameMissing(lines: number[], repairs: Repairs): void {
  let next = lines.findLast((line) => line !== 0) ?? 1;
  for (let i = lines.length - 1; i >= 0; i--) {
    if (lines[i] !== 0) next = lines[i] as number;
    else {
      lines[i] = next;
      repairs.note('row-missing', next);
    }
  }
}
