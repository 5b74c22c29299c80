import { existsSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { pathToFileURL } from 'node:url';
import { type DayCurves, eventKinds } from '../../shared-types/log.ts';
import { curvesOf } from './curves.ts';
import { curveRowsOf, dayEntryOf, daysOf, eventsWithin, keysWithin, newestEvents } from './day-queries.ts';
import { emptyLog, factsOf } from './facts.ts';
import { dayNumber, dayText, stepKey } from './layout.ts';
import type { LogReader } from './log.ts';
import { isOurLog, settingsOf, siteOf, stateWithin } from './queries.ts';
import { stepsBetween } from './steps.ts';
import { troubleOf } from './trouble.ts';
import { openWords, type Words } from './words.ts';

interface Opened {
  readonly database: DatabaseSync;
  readonly words: Words;
}

/**
 * Opens the log at `path` to read it, while a writer may write it. Never throws: what cannot be read
 * is left out and said in `remarks`, which grows with what later questions find.
 */
export function openLogReader(path: string): LogReader {
  const remarks: string[] = [];
  const opened = openToRead(path, remarks);

  function ask<Result>(without: Result, question: (opened: Opened) => Result): Result {
    if (opened === undefined) return without;
    try {
      return question(opened);
    } catch (thrown) {
      remarkOn(thrown, remarks);
      return without;
    }
  }

  /** Gives what can be read, up to where it cannot. */
  function* each<Item>(question: (opened: Opened) => Iterable<Item>): IterableIterator<Item> {
    if (opened === undefined) return;
    try {
      yield* question(opened);
    } catch (thrown) {
      remarkOn(thrown, remarks);
    }
  }

  return {
    remarks,
    days: () => ask([], ({ database }) => daysOf(database)),
    day(day) {
      const curves = ask(undefined, (open) => dayOf(open, day));
      if (curves === undefined) throw new RangeError(`nothing of ${day} is kept`);
      return curves;
    },
    span: (fromMs, toMs) => ask(emptySpan(fromMs), (open) => spanOf(open, fromMs, toMs)),
    records: (day) =>
      each((open) => {
        const entry = dayEntryOf(open.database, dayNumber(day));
        if (entry === undefined) return [];
        return stepsBetween(open, entry.firstKey - 1, entry.lastKey, 'day = ?', dayNumber(day));
      }),
    recordsWithin: (fromMs, toMs) =>
      each((open) => {
        const keys = keysWithin(open.database, fromMs, toMs);
        if (keys === undefined) return [];
        return stepsBetween(open, keys.first - 1, keys.last, 'at_ms >= ? AND at_ms < ?', fromMs, toMs);
      }),
    stateBefore: (run, step) =>
      ask(null, ({ database }) => stateWithin(database, stepKey(run, 0), stepKey(run, step))),
    between: (run, afterStep, beforeStep) =>
      each((open) => stepsBetween(open, stepKey(run, afterStep), stepKey(run, beforeStep) - 1)),
    site: (revision) => ask(null, ({ database }) => siteOf(database, revision)),
    settings: (revision) => ask(null, ({ database }) => settingsOf(database, revision)),
    engineVersion: (run) => ask(null, ({ database }) => engineVersionOf(database, run)),
    newestMs: () => ask(null, ({ database }) => newestMsOf(database)),
    newestDay: () => ask(null, ({ database }) => newestDayOf(database)),
    events: (limit, kinds = eventKinds) => ask([], ({ database }) => newestEvents(database, limit, kinds)),
    facts: () => ask(emptyLog, ({ database }) => factsOf(database, path)),
    close: () => opened?.database.close(),
  };
}

function remarkOn(thrown: unknown, remarks: string[]): void {
  const { text } = troubleOf(thrown);
  if (!remarks.includes(text)) remarks.push(text);
}

/** How long a reader waits for a writer's checkpoint [ms]. */
const patienceMs = 2000;

function openToRead(path: string, remarks: string[]): Opened | undefined {
  if (!existsSync(path)) {
    remarks.push('there is no log yet');
    return undefined;
  }
  try {
    return openedIfOurs(new DatabaseSync(path, { readOnly: true, timeout: patienceMs }));
  } catch (thrown) {
    remarkOn(thrown, remarks);
    return troubleOf(thrown).passing ? openAsItStands(path, remarks) : undefined;
  }
}

/** Without leave to write beside the log, its newest part may be missing; the rest can be read. */
function openAsItStands(path: string, remarks: string[]): Opened | undefined {
  const address = pathToFileURL(path);
  address.searchParams.set('immutable', '1');
  try {
    return openedIfOurs(new DatabaseSync(address, { readOnly: true }));
  } catch (thrown) {
    remarkOn(thrown, remarks);
    return undefined;
  }
}

function openedIfOurs(database: DatabaseSync): Opened | undefined {
  try {
    if (isOurLog(database)) return { database, words: openWords(database) };
  } catch (thrown) {
    database.close();
    throw thrown;
  }
  database.close();
  return undefined;
}

function dayOf({ database, words }: Opened, day: string): DayCurves | undefined {
  const entry = dayEntryOf(database, dayNumber(day));
  if (entry === undefined) return undefined;
  const rows = curveRowsOf(database, 'day = ?', entry.firstKey, entry.lastKey, dayNumber(day));
  return { day, ...curvesOf(rows, words.wordOf), events: eventsWithin(database, entry.fromMs, entry.toMs) };
}

function spanOf({ database, words }: Opened, fromMs: number, toMs: number): DayCurves {
  const keys = keysWithin(database, fromMs, toMs);
  if (keys === undefined) return emptySpan(fromMs);
  const condition = 'at_ms >= ? AND at_ms < ?';
  const rows = curveRowsOf(database, condition, keys.first, keys.last, fromMs, toMs);
  const first = database
    .prepare(`SELECT day FROM steps WHERE id BETWEEN ? AND ? AND ${condition} ORDER BY id LIMIT 1`)
    .get(keys.first, keys.last, fromMs, toMs);
  return {
    day: first === undefined ? utcDay(fromMs) : dayText(Number(first['day'])),
    ...curvesOf(rows, words.wordOf),
    events: eventsWithin(database, fromMs, toMs),
  };
}

const utcDay = (atMs: number) => new Date(atMs).toISOString().slice(0, 10);

const emptySpan = (fromMs: number): DayCurves => ({
  day: utcDay(fromMs),
  ...curvesOf([], String),
  events: [],
});

function engineVersionOf(database: DatabaseSync, run: number): string | null {
  const row = database.prepare('SELECT engine_version FROM runs WHERE run = ?').get(run);
  return row === undefined ? null : String(row['engine_version']);
}

function newestMsOf(database: DatabaseSync): number | null {
  const row = database.prepare('SELECT at_ms FROM steps ORDER BY id DESC LIMIT 1').get();
  return row === undefined ? null : Number(row['at_ms']);
}

function newestDayOf(database: DatabaseSync): ReturnType<LogReader['newestDay']> {
  const row = database.prepare('SELECT day, site FROM steps ORDER BY id DESC LIMIT 1').get();
  const site = row === undefined ? null : siteOf(database, Number(row['site']));
  return site === null ? null : { day: dayText(Number(row?.['day'])), site };
}
