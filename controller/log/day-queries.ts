import type { DatabaseSync } from 'node:sqlite';
import { channels } from '../../shared-types/channels.ts';
import { type DaySummary, type LogEvent, logEventSchema } from '../../shared-types/log.ts';
import { type CurveRow, curveColumns } from './curves.ts';
import { dayText, importedEngine, runOfKey, totalNames } from './layout.ts';
import { columnsOf } from './queries.ts';

/** A day's entry in the book of days, as far as its steps and events are found by it. */
export interface DayEntry {
  readonly fromMs: number;
  readonly toMs: number;
  readonly firstKey: number;
  readonly lastKey: number;
}

/** @param day - Day as a number. @returns undefined when nothing of the day is kept. */
export function dayEntryOf(database: DatabaseSync, day: number): DayEntry | undefined {
  const row = database.prepare('SELECT from_ms, to_ms, first_id, last_id FROM days WHERE day = ?').get(day);
  if (row === undefined) return undefined;
  return {
    fromMs: Number(row['from_ms']),
    toMs: Number(row['to_ms']),
    firstKey: Number(row['first_id']),
    lastKey: Number(row['last_id']),
  };
}

export function daysOf(database: DatabaseSync): DaySummary[] {
  const sql = `SELECT day, first_id, steps, first_ms, last_ms, alarms,
    min(1, covered_ms / (to_ms - from_ms)) AS covered, ${totalNames.join()} FROM days ORDER BY day`;
  const imported = importedRuns(database);
  return database
    .prepare(sql)
    .all()
    .map((row) => ({
      day: dayText(Number(row['day'])),
      steps: Number(row['steps']),
      firstMs: Number(row['first_ms']),
      lastMs: Number(row['last_ms']),
      heatHomeJ: toldNumber(row['heatHomeJ']),
      heatLostJ: toldNumber(row['heatLostJ']),
      electricityJ: toldNumber(row['electricityJ']),
      pumpRunS: Number(row['pumpRunS']),
      starts: Number(row['starts']),
      fills: toldNumber(row['fills']),
      alarms: toldNumber(row['alarms']),
      coveredFraction: Number(row['covered']),
      ...(imported.has(runOfKey(Number(row['first_id']))) ? { imported: true as const } : {}),
    }));
}

const toldNumber = (cell: unknown) => (cell === null ? null : Number(cell));

function importedRuns(database: DatabaseSync): ReadonlySet<number> {
  const rows = database.prepare('SELECT run FROM runs WHERE engine_version = ?').all(importedEngine);
  return new Set(rows.map((row) => Number(row['run'])));
}

/** Rows for curves between two keys that meet the condition. */
export function curveRowsOf(
  database: DatabaseSync,
  condition: string,
  firstKey: number,
  lastKey: number,
  ...parameters: number[]
): CurveRow[] {
  const present = columnsOf(database);
  const columns = [...curveColumns, ...channels].map((column) => (present.has(column) ? column : 'NULL'));
  const statement = database.prepare(
    `SELECT ${columns.join()} FROM steps WHERE id BETWEEN ? AND ? AND ${condition} ORDER BY id`,
  );
  statement.setReturnArrays(true);
  return statement.all(firstKey, lastKey, ...parameters) as unknown as CurveRow[];
}

/** Keys between which the steps of [fromMs, toMs) lie, by the days that touch it; undefined: none. */
export function keysWithin(
  database: DatabaseSync,
  fromMs: number,
  toMs: number,
): { readonly first: number; readonly last: number } | undefined {
  const row = database
    .prepare('SELECT min(first_id) AS a, max(last_id) AS b FROM days WHERE last_ms >= ? AND first_ms < ?')
    .get(fromMs, toMs);
  if (row === undefined || row['a'] === null) return undefined;
  return { first: Number(row['a']), last: Number(row['b']) };
}

/** Events of [fromMs, toMs) in order. */
export function eventsWithin(database: DatabaseSync, fromMs: number, toMs: number): LogEvent[] {
  const sql = 'SELECT * FROM events WHERE at_ms >= ? AND at_ms < ? ORDER BY at_ms, id';
  return database.prepare(sql).all(fromMs, toMs).flatMap(eventOf);
}

/** The newest events of the kinds, the newest first. */
export function newestEvents(
  database: DatabaseSync,
  limit: number,
  kinds: readonly LogEvent['kind'][],
): LogEvent[] {
  const places = kinds.map(() => '?').join();
  const sql = `SELECT * FROM events WHERE kind IN (${places}) ORDER BY id DESC LIMIT ?`;
  return database
    .prepare(sql)
    .all(...kinds, limit)
    .flatMap(eventOf);
}

/** Nothing for an event of a kind that this version does not know. */
function eventOf(row: Record<string, unknown>): LogEvent[] {
  const event = logEventSchema.safeParse({
    atMs: row['at_ms'],
    kind: row['kind'],
    text: row['text'],
    values: JSON.parse(String(row['json'])),
  });
  return event.success ? [event.data] : [];
}
