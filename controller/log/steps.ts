import type { DatabaseSync, StatementSync } from 'node:sqlite';
import type { LogRecord } from '../../shared-types/log.ts';
import { allColumns } from './layout.ts';
import { columnsOf } from './queries.ts';
import { type Row, recordOf } from './row.ts';
import type { Words } from './words.ts';

/** Many rows at a time cost less than one at a time, and no more memory than these. */
const rowsPerPage = 128;

interface Opened {
  readonly database: DatabaseSync;
  readonly words: Words;
}

/**
 * Steps with a key above `afterKey` and up to `toKey`, in the order in which they were written, one after
 * another. Of a damaged log it gives what comes before the damage, then throws what the database throws.
 *
 * @param also - A further condition in SQL, and `values` of the places in it.
 */
export function* stepsBetween(
  { database, words }: Opened,
  afterKey: number,
  toKey: number,
  also = 'TRUE',
  ...values: number[]
): IterableIterator<LogRecord> {
  const page = preparePage(database, also);
  let rows = rowsPerPage;
  for (let after = afterKey; rows === rowsPerPage; ) {
    rows = 0;
    for (const row of rowsOf(page, after, toKey, ...values)) {
      after = row[0] as number;
      rows++;
      yield recordOf(row, words);
    }
  }
}

/** A page at once; one row after another where that fails, to come up to the damage. */
function rowsOf(page: StatementSync, ...values: number[]): Iterable<Row> {
  try {
    return page.all(...values) as unknown as Row[];
  } catch {
    return page.iterate(...values) as unknown as Iterable<Row>;
  }
}

/** Rows of `allColumns`; an older log may lack some channel's. */
function preparePage(database: DatabaseSync, also: string): StatementSync {
  const present = columnsOf(database);
  const columns = allColumns.map((column) => (present.has(column) ? column : 'NULL'));
  const statement = database.prepare(
    `SELECT ${columns.join()} FROM steps WHERE id > ? AND id <= ? AND ${also} ORDER BY id LIMIT ${rowsPerPage}`,
  );
  statement.setReturnArrays(true);
  return statement;
}
