import { existsSync, rmSync } from 'node:fs';
import type { DatabaseSync } from 'node:sqlite';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { keepDaySql, pageColumns } from './day-book.ts';
import { type LogFile, openLogFile } from './file.ts';
import { dayNumber, importedEngine, stepKey } from './layout.ts';
import { rowOf } from './row.ts';
import { stepsBetween } from './steps.ts';
import { LogTrouble } from './trouble.ts';

/** A local day as another logger wrote it. Null: not to be told. */
export interface ImportedDay {
  readonly day: string;
  /** UTC instants between which the day lies [ms]. */
  readonly fromMs: number;
  readonly toMs: number;
  readonly steps: readonly ImportedStep[];
  /** Time of the day that its steps cover [ms]. */
  readonly coveredMs: number;
  readonly heatHomeJ: number | null;
  readonly heatLostJ: number | null;
  readonly electricityJ: number | null;
  readonly pumpRunS: number;
  readonly starts: number;
}

export interface ImportedStep extends Omit<LogRecord, 'run' | 'step'> {
  /** Heat home since the day began [J]. */
  readonly heatTodayJ: number | null;
}

/**
 * The log of days that came from another logger. Each day is a run of its own, numbered by the calendar, so that
 * days come in any order and one may be written anew. All that is put in counts from `commit` on, or not at all.
 */
export interface ImportLog {
  /** Steps of a day as they stand in the log. */
  records(day: string): LogRecord[];
  /** Keeps a site or settings that are new. @returns their revision. */
  keep(table: 'sites' | 'settings', content: Site | Settings, atMs: number): number;
  /** Puts a day in place of what the log held of it. */
  putDay(day: ImportedDay): void;
  commit(): void;
  /** Drops what was not committed; of a log that was new and stayed empty nothing is left. */
  close(): void;
}

/** @throws what keeps the file from being written, a LogTrouble where it belongs to a controller. */
export function openImportLog(path: string): ImportLog {
  const isNew = !existsSync(path);
  const file = openLogFile(path);
  const { database } = file;
  let committed = false;
  const close = () => {
    file.close();
    if (isNew && !committed)
      for (const end of ['', '-wal', '-shm', '.lock']) rmSync(path + end, { force: true });
  };
  try {
    refuseControllers(database);
    database.exec('BEGIN IMMEDIATE');
  } catch (thrown) {
    close();
    throw thrown;
  }
  return {
    records: (day) => storedSteps(file, day),
    keep: (table, content, atMs) => revisionOf(database, table, JSON.stringify(content), atMs),
    putDay: (day) => putDay(file, day),
    commit() {
      database.exec('COMMIT');
      committed = true;
    },
    close,
  };
}

function refuseControllers(database: DatabaseSync): void {
  const own = database.prepare('SELECT 1 FROM runs WHERE engine_version <> ? LIMIT 1').get(importedEngine);
  if (own !== undefined)
    throw new LogTrouble('the log belongs to a controller; days of another logger need their own');
}

function storedSteps({ database, words }: LogFile, day: string): LogRecord[] {
  const run = runOf(day);
  return [...stepsBetween({ database, words }, stepKey(run, 0), stepKey(run + 1, 0) - 1)];
}

/** Days since 1970. */
const runOf = (day: string) => Date.parse(`${day}T00:00:00Z`) / 86_400_000;

function revisionOf(database: DatabaseSync, table: 'sites' | 'settings', json: string, atMs: number): number {
  const known = database.prepare(`SELECT revision FROM ${table} WHERE json = ?`).get(json);
  if (known !== undefined) return Number(known['revision']);
  const insert = `INSERT INTO ${table} (kept_ms, json) VALUES (?, ?)`;
  return Number(database.prepare(insert).run(atMs, json).lastInsertRowid);
}

function putDay({ database, insertStep, words }: LogFile, imported: ImportedDay): void {
  const { day, steps, fromMs } = imported;
  const run = runOf(day);
  database
    .prepare('DELETE FROM steps WHERE id BETWEEN ? AND ?')
    .run(stepKey(run, 0), stepKey(run + 1, 0) - 1);
  database.prepare('INSERT OR REPLACE INTO runs VALUES (?, ?, ?)').run(run, fromMs, importedEngine);
  steps.forEach(({ heatTodayJ, ...step }, index) => {
    insertStep.run(...rowOf({ ...step, run, step: index + 1 }, heatTodayJ, words));
  });
  const page = pageOf(imported, run);
  database.prepare(keepDaySql).run(...pageColumns.map((column) => page[column]));
}

function pageOf(imported: ImportedDay, run: number): Record<(typeof pageColumns)[number], number | null> {
  const { day, steps, fromMs, toMs, coveredMs, heatHomeJ, heatLostJ, electricityJ, pumpRunS, starts } =
    imported;
  return {
    day: dayNumber(day),
    from_ms: fromMs,
    to_ms: toMs,
    first_id: stepKey(run, 1),
    last_id: stepKey(run, steps.length),
    steps: steps.length,
    first_ms: steps[0]?.input.nowMs ?? fromMs,
    last_ms: steps.at(-1)?.input.nowMs ?? fromMs,
    covered_ms: coveredMs,
    ...{ heatHomeJ, heatLostJ, electricityJ, pumpRunS, starts },
    // No rules were asked that could have raised an alarm, and none that could tell a fill.
    alarms: null,
    fills: null,
  };
}
