import { mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync, type StatementSync } from 'node:sqlite';
import { type DayBook, type LastStep, openDayBook } from './day-book.ts';
import { addColumnSql, allColumns, createSql, totalNames } from './layout.ts';
import { type LocalDays, localDaysOf } from './local-day.ts';
import { takeWriterLock } from './lock.ts';
import { columnsOf, isOurLog, newestRevision, siteOf } from './queries.ts';
import { listOf, totalsOf } from './row.ts';
import { LogTrouble } from './trouble.ts';
import { openWords, type Words } from './words.ts';

/** A log opened for writing. Its functions throw what the database throws. */
export interface LogFile {
  readonly database: DatabaseSync;
  readonly words: Words;
  readonly book: DayBook;
  readonly insertStep: StatementSync;
  readonly insertEvent: StatementSync;
  /** Takes another zone for the days that are begun from now on. */
  turnToZone(timeZone: string): void;
  close(): void;
}

/** Up to this size the whole file is checked when it is opened [bytes]: a few tenths of a second. */
const checkedBytes = 64 * 1024 * 1024;

/** How long a reader's checkpoint may hold up a write [ms]. */
const patienceMs = 1000;

/** @throws what keeps the file from being written. */
export function openLogFile(path: string): LogFile {
  mkdirSync(dirname(path), { recursive: true });
  const lock = takeWriterLock(path);
  let database: DatabaseSync | undefined;
  try {
    database = new DatabaseSync(path, { timeout: patienceMs });
    makeReady(database, path);
    return withTools(database, lock);
  } catch (thrown) {
    database?.close();
    lock.release();
    throw thrown;
  }
}

function makeReady(database: DatabaseSync, path: string): void {
  const known = isOurLog(database);
  database.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL');
  if (!known) database.exec(`BEGIN; ${createSql} COMMIT`);
  else if (statSync(path).size <= checkedBytes) checkWhole(database);
  const present = columnsOf(database);
  for (const column of allColumns) if (!present.has(column)) database.exec(addColumnSql(column));
}

function checkWhole(database: DatabaseSync): void {
  const found = String(database.prepare('PRAGMA quick_check(1)').get()?.['quick_check']);
  if (found !== 'ok') throw new LogTrouble(`the log is damaged (${found.replaceAll(/\s+/g, ' ')})`);
}

function withTools(database: DatabaseSync, lock: { release(): void }): LogFile {
  const words = openWords(database);
  let days: LocalDays = localDaysOf(zoneOf(database));
  const book = openDayBook(database, lastStep(database, words), (day) => days.boundsOf(day));
  const places = allColumns.map(() => '?').join();
  return {
    database,
    words,
    book,
    insertStep: database.prepare(`INSERT INTO steps (${allColumns.join()}) VALUES (${places})`),
    insertEvent: database.prepare('INSERT INTO events (at_ms, kind, text, json) VALUES (?, ?, ?, ?)'),
    turnToZone(timeZone) {
      days = localDaysOf(timeZone);
    },
    close() {
      database.close();
      lock.release();
    },
  };
}

function zoneOf(database: DatabaseSync): string {
  const newest = newestRevision(database, 'sites');
  return (newest === null ? null : siteOf(database, newest.revision)?.timeZone) ?? 'Etc/UTC';
}

function lastStep(database: DatabaseSync, words: Words): LastStep | null {
  const row = database
    .prepare(`SELECT alarms, ${totalNames.join()} FROM steps ORDER BY id DESC LIMIT 1`)
    .get();
  if (row === undefined) return null;
  return {
    total: totalsOf((name) => row[name]),
    alarms: listOf(words.wordOf(Number(row['alarms']))),
  };
}
