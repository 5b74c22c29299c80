import { channels } from '../../shared-types/channels.ts';

/**
 * Version of the file's layout, kept in its `user_version`. A newer one is refused. Version 1 wants a number for
 * each sum of a day; since 2 what another logger did not tell stays null.
 */
export const layoutVersion = 2;

/** Stands as engine of the runs that were taken in from another logger: nothing was decided in them. */
export const importedEngine = 'imported';

/** Tells a log from any other SQLite file; the letters `flwl`. */
export const applicationId = 0x66_6c_77_6c;

/** Totals, in the order of their columns. */
export const totalNames = ['heatHomeJ', 'heatLostJ', 'electricityJ', 'pumpRunS', 'starts', 'fills'] as const;

/**
 * Columns of a step that every log has. What repeats from row to row (phase, reasons, sets of alarms and
 * of failed channels) is the number of a word in the table `words`, so that a row is numbers only.
 */
export const stepColumns = [
  'id',
  'at_ms',
  'day',
  'site',
  'settings',
  'elapsed_ms',
  'faults',
  'feedback_pump',
  'feedback_drain',
  'feedback_age_ms',
  'request',
  'phase',
  'pump',
  'drain_open',
  'drain_pump',
  'exchanger_pump',
  'reason_phase',
  'reason_pump',
  'reason_drain',
  'alarms',
  'failed',
  ...totalNames,
  'heat_today_j',
  // Null in a loop without a heat dump, and in logs from before there were any.
  'heat_dump',
] as const;
export type StepColumn = (typeof stepColumns)[number];

/** A channel's value and age; both null: the channel was not there. Age alone: it had no number. */
const channelColumns = channels.flatMap((channel) => [channel, `${channel}_age_ms`]);

export const allColumns: readonly string[] = [...stepColumns, ...channelColumns];

const integers = new Set<string>([
  'day',
  'site',
  'settings',
  'faults',
  'feedback_drain',
  'phase',
  'drain_open',
  'drain_pump',
  'exchanger_pump',
  'reason_phase',
  'reason_pump',
  'reason_drain',
  'alarms',
  'failed',
  'heat_dump',
]);

function declarationOf(column: string): string {
  if (column === 'id') return 'id INTEGER PRIMARY KEY';
  if (column === 'request') return 'request TEXT';
  return `${column} ${integers.has(column) ? 'INTEGER' : 'REAL'}`;
}

const daySums = totalNames.map((name) => `${name} REAL`).join(', ');

/** Everything that a new log needs. */
export const createSql = `
  CREATE TABLE runs (run INTEGER PRIMARY KEY, started_ms REAL NOT NULL, engine_version TEXT NOT NULL);
  CREATE TABLE sites (revision INTEGER PRIMARY KEY, kept_ms REAL NOT NULL, json TEXT NOT NULL);
  CREATE TABLE settings (revision INTEGER PRIMARY KEY, kept_ms REAL NOT NULL, json TEXT NOT NULL);
  CREATE TABLE words (id INTEGER PRIMARY KEY, word TEXT NOT NULL UNIQUE);
  CREATE TABLE steps (${allColumns.map(declarationOf).join(', ')});
  CREATE TABLE states (
    id INTEGER PRIMARY KEY, day INTEGER, at_ms REAL NOT NULL, engine_version TEXT NOT NULL, json TEXT NOT NULL);
  CREATE TABLE events (
    id INTEGER PRIMARY KEY, at_ms REAL NOT NULL, kind TEXT NOT NULL, text TEXT NOT NULL, json TEXT NOT NULL);
  CREATE INDEX events_by_time ON events (at_ms);
  CREATE TABLE days (
    day INTEGER PRIMARY KEY, from_ms REAL NOT NULL, to_ms REAL NOT NULL,
    first_id INTEGER NOT NULL, last_id INTEGER NOT NULL, steps INTEGER NOT NULL,
    first_ms REAL NOT NULL, last_ms REAL NOT NULL, alarms INTEGER, covered_ms REAL NOT NULL,
    ${daySums});
  PRAGMA application_id = ${applicationId};
  PRAGMA user_version = ${layoutVersion};
`;

/** Adds a column to a log that was begun before what it holds existed. */
export const addColumnSql = (column: string) => `ALTER TABLE steps ADD COLUMN ${declarationOf(column)}`;

const stepsOfRun = 2 ** 32;

/** Key of a step: runs and their steps in order, in one whole number that JavaScript holds exactly. */
export const stepKey = (run: number, step: number) => run * stepsOfRun + Math.min(step, stepsOfRun - 1);
export const runOfKey = (key: number) => Math.floor(key / stepsOfRun);
export const stepOfKey = (key: number) => key % stepsOfRun;

/** A local day as a whole number, 20310621 for 2031-06-21. */
export const dayNumber = (day: string) => Number(day.replaceAll('-', ''));
export function dayText(day: number): string {
  const digits = `${day}`.padStart(8, '0');
  return `${digits.slice(0, 4)}-${digits.slice(4, 6)}-${digits.slice(6)}`;
}
