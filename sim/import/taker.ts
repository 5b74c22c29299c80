import type { Channel } from '../../shared-types/channels.ts';
import type { ImportReport, TimeFormat, UnderstoodRow } from '../../shared-types/foreign-log.ts';
import type { Zone } from '../weather/local-time.ts';
import { drainIn, pumpIn, valueIn } from './cells.ts';
import type { Columns } from './columns.ts';
import type { Decimal } from './guess.ts';
import { instantOf } from './instants.ts';
import type { Misses } from './misses.ts';

/** A row that was understood, and where in the file it stands. */
export interface ForeignRow extends UnderstoodRow {
  readonly line: number;
  /** Rises each time that a row is earlier than the one before it. */
  readonly piece: number;
  /** The clocks show its time twice, and the row before decided which one is meant. */
  readonly repeated: boolean;
}

export interface TakerOptions {
  readonly columns: Columns;
  readonly format: TimeFormat;
  readonly zone: Zone;
  readonly decimal: Decimal;
  readonly misses: Misses;
  readonly onRow: (row: ForeignRow) => void;
}

/** Understands rows one after another, and counts what was in them. */
export interface Taker {
  take(cells: readonly string[], line: number): void;
  /** The line from which on the text is no CSV. */
  breakOff(line: number, why: string): void;
  counts(): Pick<ImportReport, 'rows' | 'repeatedTimes' | 'values'>;
}

export function createTaker(options: TakerOptions): Taker {
  const { columns, format, zone, decimal, misses, onRow } = options;
  const values: Partial<Record<Channel, number>> = {};
  let [rows, repeatedTimes, piece] = [0, 0, 0];
  let lastMs = Number.NEGATIVE_INFINITY;

  function nextInstant(text: string, line: number): { atMs: number; repeated: boolean } | undefined {
    const instant = instantOf(text, format, zone, lastMs);
    const { name: column } = columns.time;
    if (!instant.ok) {
      misses.note({ line, column, text, cause: instant.why });
      return undefined;
    }
    if (instant.repeated) repeatedTimes++;
    if (instant.atMs < lastMs) {
      piece++;
      misses.note({ line, column, text, cause: 'out-of-order' });
    }
    lastMs = instant.atMs;
    return instant;
  }

  function valuesOf(cells: readonly string[], line: number): UnderstoodRow['values'] {
    const found: Partial<Record<Channel, number>> = {};
    for (const column of columns.values) {
      const value = valueIn(cells, column, decimal, (miss) => misses.note({ line, ...miss }));
      if (value === null) continue;
      found[column.channel] = value;
      values[column.channel] = (values[column.channel] ?? 0) + 1;
    }
    return found;
  }

  function outputsOf(cells: readonly string[], line: number) {
    const note = (miss: Parameters<Parameters<typeof drainIn>[2]>[0]) => misses.note({ line, ...miss });
    const pumpFraction = columns.pump === undefined ? null : pumpIn(cells, columns.pump, decimal, note);
    const told = pumpFraction !== null && columns.drain !== undefined;
    return { pumpFraction, drainOpen: told ? drainIn(cells, columns.drain, note) : null };
  }

  return {
    take(cells, line) {
      rows++;
      const instant = nextInstant(cells[columns.time.index] ?? '', line);
      if (instant === undefined) return;
      const { atMs, repeated } = instant;
      const row = { values: valuesOf(cells, line), ...outputsOf(cells, line) };
      if (row.pumpFraction !== null || Object.keys(row.values).length > 0)
        onRow({ atMs, repeated, line, piece, ...row });
      else misses.note({ line, column: '', text: '', cause: 'no-value' });
    },
    breakOff: (line, why) => misses.note({ line, column: '', text: why, cause: 'not-csv' }),
    counts: () => ({ rows, repeatedTimes, values }),
  };
}
