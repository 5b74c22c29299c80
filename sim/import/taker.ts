import type { Channel } from '../../shared-types/channels.ts';
import type { Zone } from '../weather/local-time.ts';
import { type Columns, valueIn } from './columns.ts';
import type { Decimal } from './guess.ts';
import { instantOf } from './instants.ts';
import type { TimeFormat } from './map.ts';
import { createMisses, createSteps, type ImportReport, type MissCause } from './report.ts';

/** A row that was understood. */
export interface ForeignRow {
  readonly atMs: number;
  readonly values: Readonly<Partial<Record<Channel, number>>>;
}

export interface TakerOptions {
  readonly columns: Columns;
  readonly timeColumn: string;
  readonly format: TimeFormat;
  readonly zone: Zone;
  readonly decimal: Decimal;
  readonly onRow: (row: ForeignRow) => void;
}

/** Takes rows one after another and counts what was in them. */
export interface Taker {
  take(cells: readonly string[], line: number): void;
  /** The line from which on the text is no CSV. */
  breakOff(line: number, why: string): void;
  counts(): Omit<ImportReport, 'encoding' | 'delimiter' | 'decimal'>;
}

export function createTaker(options: TakerOptions): Taker {
  const { columns, timeColumn, format, zone, decimal, onRow } = options;
  const misses = createMisses();
  const steps = createSteps();
  const values: Partial<Record<Channel, number>> = {};
  let [rows, rowsTaken, repeatedTimes] = [0, 0, 0];
  let firstMs: number | null = null;
  let lastMs = Number.NEGATIVE_INFINITY;

  /** The row's instant if it comes after all before it; what keeps it from being taken is noted. */
  function nextInstant(text: string, line: number): number | undefined {
    const instant = instantOf(text, format, zone, lastMs);
    const cause = missOf(instant, lastMs);
    if (cause !== undefined) misses.note({ line, column: timeColumn, text, cause });
    if (!instant.ok || cause !== undefined) return undefined;
    if (instant.repeated) repeatedTimes++;
    return instant.atMs;
  }

  function valuesOf(cells: readonly string[], line: number): ForeignRow['values'] {
    const found: Partial<Record<Channel, number>> = {};
    for (const column of columns.values) {
      const value = valueIn(cells, column, decimal, (miss) => misses.note({ line, ...miss }));
      if (value === null) continue;
      found[column.channel] = value;
      values[column.channel] = (values[column.channel] ?? 0) + 1;
    }
    return found;
  }

  return {
    take(cells, line) {
      rows++;
      const atMs = nextInstant(cells[columns.timeIndex] ?? '', line);
      if (atMs === undefined) return;
      if (firstMs === null) firstMs = atMs;
      else steps.note(atMs - lastMs);
      lastMs = atMs;
      rowsTaken++;
      onRow({ atMs, values: valuesOf(cells, line) });
    },
    breakOff: (line, why) => misses.note({ line, column: '', text: why, cause: 'not-csv' }),
    counts: () => ({
      ...{ rows, rowsTaken, repeatedTimes, firstMs, values },
      lastMs: firstMs === null ? null : lastMs,
      usualStepMs: steps.usualStepMs(),
      gaps: steps.gaps(),
      misses: misses.counts,
      places: misses.places,
    }),
  };
}

function missOf(instant: ReturnType<typeof instantOf>, lastMs: number): MissCause | undefined {
  if (!instant.ok) return instant.why;
  if (instant.atMs === lastMs) return 'duplicated';
  return instant.atMs < lastMs ? 'out-of-order' : undefined;
}
