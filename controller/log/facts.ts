import { statSync } from 'node:fs';
import type { DatabaseSync } from 'node:sqlite';
import type { LogFacts } from '../../shared-types/log.ts';

export const emptyLog: LogFacts = { sizeBytes: 0, firstMs: null, lastMs: null, days: 0, steps: 0, runs: 0 };

/** What the log at `path` holds, by its book of days. */
export function factsOf(database: DatabaseSync, path: string): LogFacts {
  const book = database
    .prepare(
      'SELECT count(*) AS days, total(steps) AS steps, min(first_ms) AS a, max(last_ms) AS b FROM days',
    )
    .get();
  const runs = database.prepare('SELECT count(*) AS runs FROM runs').get();
  return {
    sizeBytes: sizeOf(path) + sizeOf(`${path}-wal`),
    firstMs: instantOf(book?.['a']),
    lastMs: instantOf(book?.['b']),
    days: Number(book?.['days']),
    steps: Number(book?.['steps']),
    runs: Number(runs?.['runs']),
  };
}

const instantOf = (value: unknown) => (typeof value === 'number' ? value : null);
const sizeOf = (path: string) => statSync(path, { throwIfNoEntry: false })?.size ?? 0;
