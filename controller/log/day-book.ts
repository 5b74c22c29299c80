import type { DatabaseSync } from 'node:sqlite';
import type { Totals } from '../../shared-types/engine.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import { dayNumber, stepKey, totalNames } from './layout.ts';

/** A step that follows the one before by more than this leaves a hole in the day [ms]. */
export const holeMs = 60_000;

type Sums = Record<keyof Totals, number>;

interface Page extends Sums {
  day: number;
  from_ms: number;
  to_ms: number;
  first_id: number;
  last_id: number;
  steps: number;
  first_ms: number;
  last_ms: number;
  alarms: number;
  covered_ms: number;
}

/** The last step that was entered, as far as the next one needs it. */
export interface LastStep {
  readonly total: Totals;
  readonly alarms: readonly string[];
}

/** Sums up each local day while its steps are written, so that nobody has to read them for it. */
export interface DayBook {
  /** Enters a step. @returns the heat that its day has brought home so far [J]. */
  enter(record: LogRecord): number;
}

/**
 * @param last - The newest step of the log, or null for an empty one.
 * @param boundsOf - UTC instants between which a local day lies.
 */
export function openDayBook(
  database: DatabaseSync,
  last: LastStep | null,
  boundsOf: (day: string) => { readonly fromMs: number; readonly toMs: number },
): DayBook {
  const find = database.prepare('SELECT * FROM days WHERE day = ?');
  const keep = database.prepare(keepDaySql);
  let page: Page | undefined;
  /** Totals from which the open page counts. */
  let base: Sums | undefined;

  function turnTo(record: LogRecord): Page {
    const day = dayNumber(record.input.localDay);
    if (page?.day === day) return page;
    const found = find.get(day) as unknown as Page | undefined;
    page = found === undefined ? newPage(record, boundsOf(record.input.localDay)) : { ...found };
    base = sumsOf((name) => (last?.total ?? record.outcome.total)[name] - (found?.[name] ?? 0));
    return page;
  }

  return {
    enter(record) {
      const open = turnTo(record);
      const { total, alarms } = record.outcome;
      const from = base as Sums;
      for (const name of totalNames) {
        // A total that fell was begun anew: what it had brought stays counted.
        const before = last?.total[name] ?? 0;
        if (total[name] < before) from[name] -= before;
        open[name] = total[name] - from[name];
      }
      open.alarms += alarms.filter((code) => !last?.alarms.includes(code)).length;
      count(open, record);
      last = { total, alarms };
      keep.run(...pageColumns.map((column) => open[column]));
      return open.heatHomeJ;
    },
  };
}

function count(page: Page, { run, step, input }: LogRecord): void {
  page.steps++;
  page.last_id = stepKey(run, step);
  page.first_ms = Math.min(page.first_ms, input.nowMs);
  page.last_ms = Math.max(page.last_ms, input.nowMs);
  if (input.elapsedMs !== null && input.elapsedMs <= holeMs) page.covered_ms += input.elapsedMs;
}

const sumsOf = (value: (name: keyof Totals) => number) =>
  Object.fromEntries(totalNames.map((name) => [name, value(name)])) as Sums;

function newPage({ run, step, input }: LogRecord, bounds: { fromMs: number; toMs: number }): Page {
  return {
    day: dayNumber(input.localDay),
    from_ms: bounds.fromMs,
    to_ms: bounds.toMs,
    first_id: stepKey(run, step),
    last_id: stepKey(run, step),
    steps: 0,
    first_ms: input.nowMs,
    last_ms: input.nowMs,
    alarms: 0,
    covered_ms: 0,
    ...sumsOf(() => 0),
  };
}

/** Columns of the table of days. */
export const pageColumns = [
  'day',
  'from_ms',
  'to_ms',
  'first_id',
  'last_id',
  'steps',
  'first_ms',
  'last_ms',
  'alarms',
  'covered_ms',
  ...totalNames,
] as const satisfies (keyof Page)[];

/** Keeps a day in place of what was kept of it. */
export const keepDaySql = `INSERT OR REPLACE INTO days (${pageColumns.join()}) VALUES (${pageColumns.map(() => '?').join()})`;
