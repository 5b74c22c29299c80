import type { Miss, UnderstoodRow } from '../../shared-types/foreign-log.ts';
import type { ForeignRow } from './taker.ts';

export interface ArrangeOptions {
  readonly usualStepMs: number | null;
  /** The file is in order but for a few places. */
  readonly inOrder: boolean;
  /** Told of each row that is left out, and of each that says otherwise than one before it. */
  readonly note: (miss: Miss) => void;
}

/**
 * The rows of a day, sorted by their instant, as samples of different instants.
 *
 * Left out are: rows over ground that an earlier part of the file has covered already, as a clock that was set
 * back writes them; and, in a file without order, times that the clocks show twice. Rows of one instant become
 * one sample; where they disagree the first in the file is kept.
 */
export function arrange(rows: readonly ForeignRow[], options: ArrangeOptions): ForeignRow[] {
  const kept = options.inOrder ? withoutSetBack(rows, options) : withoutTwoInstants(rows, options.note);
  const samples: ForeignRow[] = [];
  for (const row of kept) {
    const before = samples.at(-1);
    if (before?.atMs !== row.atMs) samples.push(row);
    else samples[samples.length - 1] = joined(before, row, options.note);
  }
  return samples;
}

const missOf = ({ line }: ForeignRow, cause: Miss['cause']): Miss => ({ line, column: '', text: '', cause });

function withoutTwoInstants(rows: readonly ForeignRow[], note: ArrangeOptions['note']): ForeignRow[] {
  return rows.filter((row) => {
    if (row.repeated) note(missOf(row, 'two-instants'));
    return !row.repeated;
  });
}

/** Rows of an earlier part this close on both sides leave no room for another of its own [usual steps]. */
const coveredSteps = 1.5;

function withoutSetBack(
  rows: readonly ForeignRow[],
  { usualStepMs, note }: ArrangeOptions,
): readonly ForeignRow[] {
  if (usualStepMs === null) return rows;
  const before = neighbours(rows);
  const after = neighbours(rows.toReversed()).reverse();
  return rows.filter((row, index) => {
    const [earlier, later] = [before[index], after[index]];
    if (earlier === undefined || later === undefined) return true;
    const covered = later - earlier <= coveredSteps * usualStepMs && earlier < row.atMs && row.atMs < later;
    if (covered) note(missOf(row, 'clock-set-back'));
    return !covered;
  });
}

/** For each row the instant of the nearest one passed so far that belongs to an earlier part of the file. */
function neighbours(rows: readonly ForeignRow[]): (number | undefined)[] {
  // Who is passed by a row of an earlier or the same part is nobody's nearest any more.
  const passed: ForeignRow[] = [];
  return rows.map((row) => {
    while ((passed.at(-1)?.piece ?? -1) >= row.piece) passed.pop();
    const nearestMs = passed.at(-1)?.atMs;
    passed.push(row);
    return nearestMs;
  });
}

/** Two rows of one instant as one. */
function joined(first: ForeignRow, again: ForeignRow, note: ArrangeOptions['note']): ForeignRow {
  note(missOf(again, disagree(first, again) ? 'contested' : 'duplicated'));
  return { ...first, ...mergedSample(first, again) };
}

/** What two samples of one instant tell together; where both tell something the first counts. */
export function mergedSample(first: UnderstoodRow, second: UnderstoodRow): UnderstoodRow {
  return {
    atMs: first.atMs,
    values: { ...second.values, ...first.values },
    pumpFraction: first.pumpFraction ?? second.pumpFraction,
    drainOpen: first.drainOpen ?? second.drainOpen,
  };
}

function disagree(a: UnderstoodRow, b: UnderstoodRow): boolean {
  const other: Readonly<Record<string, number>> = b.values;
  const differ = <Value>(one: Value | null, two: Value | null | undefined) =>
    one !== null && two !== null && two !== undefined && one !== two;
  return (
    differ(a.pumpFraction, b.pumpFraction) ||
    differ(a.drainOpen, b.drainOpen) ||
    Object.entries(a.values).some(([channel, value]) => differ(value, other[channel]))
  );
}

/** Whether two samples of one instant tell the same. */
export function sameSample(a: UnderstoodRow, b: UnderstoodRow): boolean {
  return (
    a.pumpFraction === b.pumpFraction &&
    a.drainOpen === b.drainOpen &&
    Object.keys(a.values).length === Object.keys(b.values).length &&
    !disagree(a, b)
  );
}
