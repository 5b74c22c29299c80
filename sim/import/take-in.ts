import { localDaysOf } from '../../controller/log/local-day.ts';
import type { Clash, ImportMap, ImportReport } from '../../shared-types/foreign-log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { arrange } from './arrange.ts';
import { ImportRefused } from './import-refused.ts';
import { openTarget } from './import-target.ts';
import { type DayOutcome, type Keeping, keepDay } from './keep.ts';
import { createMisses, type Misses } from './misses.ts';
import { type ReadReport, readForeignCsv } from './read.ts';
import { openStage, type Stage } from './stage.ts';
import type { ForeignRow } from './taker.ts';

export interface TakeInOptions {
  readonly map: ImportMap;
  /** The loop that the file tells of; its zone cuts the days. */
  readonly site: Site;
  readonly settings: Settings;
  /** Log of imported days. */
  readonly logPath: string;
  /** False: nothing is kept, it is only told what would be. */
  readonly write: boolean;
  readonly clash?: Clash;
  /** Told now and then how much is done, 0 to 1. @returns false to give up; then nothing is kept. */
  readonly goOn?: (doneFraction: number) => boolean;
}

export type TakeInOutcome =
  | { readonly ok: true; readonly report: ImportReport }
  | { readonly ok: false; readonly faults: readonly string[] };

/** Most rows of one day: a few a second. A design choice. */
const mostRowsADay = 300_000;
const shownRows = 20;

/**
 * Takes the days of a foreign CSV in: reads it, brings its rows into order, and puts them to the log of imported
 * days, all of them or none.
 *
 * Errors: values. @throws what the file system and the database throw.
 */
export async function takeIn(path: string, options: TakeInOptions): Promise<TakeInOutcome> {
  const { map, goOn = () => true } = options;
  const misses = createMisses();
  const stage = openStage([...new Set(map.values.map(({ channel }) => channel))]);
  try {
    const reading = { misses, onRow: stage.take, goOn: (done: number) => goOn(done / 2) };
    const read = await readForeignCsv(path, map, reading);
    if (!read.ok) return read;
    return { ok: true, report: keepAll(stage, misses, options, read.report) };
  } catch (thrown) {
    if (thrown instanceof ImportRefused) return { ok: false, faults: [thrown.message] };
    throw thrown;
  } finally {
    stage.close();
  }
}

function keepAll(stage: Stage, misses: Misses, options: TakeInOptions, read: ReadReport): ImportReport {
  const { site, settings, clash = 'keep', logPath, write } = options;
  const target = openTarget(logPath, write);
  try {
    const sums = keepDays(stage, misses, options, { ...target, site, settings, clash });
    target.commit();
    const { inOrder: _, ...facts } = stage.facts();
    const { counts, places } = misses;
    return {
      ...read,
      ...facts,
      ...sums,
      misses: counts,
      places: places.toSorted((a, b) => a.line - b.line),
      firstRows: stage.firstRows(shownRows).map(shownRow),
    };
  } finally {
    target.close();
  }
}

const shownRow = ({ atMs, values, pumpFraction, drainOpen }: ForeignRow) => ({
  atMs,
  values,
  pumpFraction,
  drainOpen,
});

function keepDays(stage: Stage, misses: Misses, { goOn = () => true }: TakeInOptions, keeping: Keeping) {
  const { dayOf, boundsOf } = localDaysOf(keeping.site.timeZone);
  const { firstMs, lastMs, ...order } = stage.facts();
  const sums = { rowsTaken: 0, days: 0, daysChanged: 0, daysWithHeat: 0, stepsAdded: 0, stepsChanged: 0 };
  for (let atMs = firstMs ?? undefined; atMs !== undefined; ) {
    const day = dayOf(atMs);
    const { fromMs, toMs } = boundsOf(day);
    const rows = stage.rowsOf(fromMs, toMs);
    if (rows.length > mostRowsADay) throw new ImportRefused(`${day} has more than ${mostRowsADay} rows`);
    const samples = arrange(rows, { ...order, note: misses.note });
    addTo(sums, samples, keepDay({ day, fromMs, toMs, samples }, keeping), misses);
    const done = (toMs - (firstMs as number)) / Math.max(1, (lastMs as number) - (firstMs as number));
    if (!goOn(0.5 + Math.min(1, done) / 2)) throw new ImportRefused('it was given up; nothing was kept');
    atMs = stage.firstFrom(toMs);
  }
  return sums;
}

type Sums = Pick<ImportReport, 'rowsTaken' | 'days' | 'daysChanged' | 'daysWithHeat'> &
  Pick<ImportReport, 'stepsAdded' | 'stepsChanged'>;

function addTo(sums: Sums, samples: readonly ForeignRow[], outcome: DayOutcome, misses: Misses): void {
  const { added, changed, taken, hasHeat } = outcome;
  for (const { atMs, line } of samples)
    if (taken.has(atMs)) sums.rowsTaken++;
    else misses.note({ line, column: '', text: '', cause: 'no-pump' });
  sums.days++;
  sums.daysChanged += Number(added + changed > 0);
  sums.daysWithHeat += Number(hasHeat);
  sums.stepsAdded += added;
  sums.stepsChanged += changed;
}
