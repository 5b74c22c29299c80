import { DatabaseSync } from 'node:sqlite';
import type { Channel } from '../../shared-types/channels.ts';
import type { ForeignRow } from './taker.ts';

/** Rows of a file on their way into order: on disk, so that a long file needs no more memory than a day of it. */
export interface Stage {
  take(row: ForeignRow): void;
  /** First instant that is not before `fromMs`; undefined: there is none [ms]. */
  firstFrom(fromMs: number): number | undefined;
  /** Rows of [fromMs, toMs) by their instant, those of one instant as the file has them. */
  rowsOf(fromMs: number, toMs: number): ForeignRow[];
  /** The first rows as the file has them. */
  firstRows(count: number): ForeignRow[];
  facts(): StageFacts;
  close(): void;
}

interface StageFacts {
  readonly firstMs: number | null;
  readonly lastMs: number | null;
  readonly usualStepMs: number | null;
  /** Distances of more than four usual steps. */
  readonly gaps: number;
  /** Rows are in order but for a few places. */
  readonly inOrder: boolean;
}

/** A file with at most one step back in so many rows counts as in order. A design choice. */
const rowsAPiece = 50;

/** @param channels - Channels that rows may have a value of. */
export function openStage(channels: readonly Channel[]): Stage {
  // A database without a name lives in a temporary file that goes with it.
  const database = new DatabaseSync('');
  const fixed = ['at_ms', 'line', 'piece', 'repeated', 'pump', 'drain'];
  const columns = [...fixed, ...channels];
  database.exec(`CREATE TABLE rows (${columns.join()}); BEGIN`);
  const insert = database.prepare(`INSERT INTO rows VALUES (${columns.map(() => '?').join()})`);
  const rows = (sql: string, ...parameters: number[]) => {
    const statement = database.prepare(`SELECT ${columns.join()} FROM rows ${sql}`);
    statement.setReturnArrays(true);
    return (statement.all(...parameters) as unknown as (number | null)[][]).map((cells) =>
      rowOf(cells, channels),
    );
  };
  /** Once all rows are in, they are asked for in order. */
  const sorted = once(() => database.exec('CREATE INDEX by_time ON rows (at_ms, line)'));
  return {
    take({ atMs, line, piece, repeated, pumpFraction, drainOpen, values }) {
      const drain = drainOpen === null ? null : Number(drainOpen);
      const measured = channels.map((channel) => values[channel] ?? null);
      insert.run(atMs, line, piece, Number(repeated), pumpFraction, drain, ...measured);
    },
    firstFrom(fromMs) {
      sorted();
      const found = database.prepare('SELECT min(at_ms) AS at FROM rows WHERE at_ms >= ?').get(fromMs)?.[
        'at'
      ];
      return found === null ? undefined : Number(found);
    },
    rowsOf(fromMs, toMs) {
      sorted();
      return rows('WHERE at_ms >= ? AND at_ms < ? ORDER BY at_ms, line', fromMs, toMs);
    },
    firstRows: (count) => rows('ORDER BY line LIMIT ?', count),
    facts() {
      sorted();
      return factsOf(database);
    },
    close: () => database.close(),
  };
}

function once(work: () => void): () => void {
  let done = false;
  return () => {
    if (!done) work();
    done = true;
  };
}

function rowOf(cells: readonly (number | null)[], channels: readonly Channel[]): ForeignRow {
  const [atMs, line, piece, repeated, pumpFraction = null, drain, ...measured] = cells;
  const values: Partial<Record<Channel, number>> = {};
  channels.forEach((channel, index) => {
    const value = measured[index];
    if (typeof value === 'number') values[channel] = value;
  });
  return {
    atMs: atMs as number,
    line: line as number,
    piece: piece as number,
    repeated: repeated === 1,
    pumpFraction,
    drainOpen: drain === null ? null : drain === 1,
    values,
  };
}

/** Distances of neighbouring instants. */
const stepsSql = `SELECT at_ms - lag(at_ms) OVER (ORDER BY at_ms) AS step FROM rows`;

function factsOf(database: DatabaseSync): StageFacts {
  const sql = 'SELECT count(*) AS rows, min(at_ms) AS a, max(at_ms) AS b, max(piece) AS pieces FROM rows';
  const { rows, a, b, pieces } = database.prepare(sql).get() as Record<string, number | null>;
  const usual = database
    .prepare(
      `SELECT step FROM (${stepsSql}) WHERE step > 0 GROUP BY step ORDER BY count(*) DESC, step LIMIT 1`,
    )
    .get()?.['step'];
  const usualStepMs = typeof usual === 'number' ? usual : null;
  const gaps = database
    .prepare(`SELECT count(*) AS gaps FROM (${stepsSql}) WHERE step > ?`)
    .get(4 * (usualStepMs ?? 0))?.['gaps'];
  return {
    firstMs: a ?? null,
    lastMs: b ?? null,
    usualStepMs,
    gaps: Number(gaps),
    inOrder: (pieces ?? 0) * rowsAPiece <= (rows ?? 0),
  };
}
