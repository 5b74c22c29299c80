import { expect, test } from 'vitest';
import type { Miss } from '../../../../shared-types/foreign-log.ts';
import { type ArrangeOptions, arrange } from '../../../../sim/import/arrange.ts';
import type { ForeignRow } from '../../../../sim/import/taker.ts';

/** A row at a second, the place in the file being its number. */
const rowAt = (second: number, line: number, changes: Partial<ForeignRow> = {}): ForeignRow => ({
  atMs: second * 1000,
  line,
  piece: 0,
  repeated: false,
  values: { panOutletC: second },
  pumpFraction: 1,
  drainOpen: null,
  ...changes,
});

function arranged(rows: readonly ForeignRow[], options: Partial<ArrangeOptions> = {}) {
  const misses: Miss[] = [];
  const sorted = rows.toSorted((a, b) => a.atMs - b.atMs || a.line - b.line);
  const samples = arrange(sorted, {
    usualStepMs: 60_000,
    inOrder: true,
    note: (miss) => misses.push(miss),
    ...options,
  });
  return { seconds: samples.map(({ atMs }) => atMs / 1000), samples, misses };
}

const causes = (misses: readonly Miss[]) => misses.map(({ line, cause }) => [line, cause]);
const later = (second: number, line: number) => rowAt(second, line, { piece: 1 });

test('a clock that was set back writes over covered ground, and that is left out', () => {
  const { seconds, misses } = arranged([
    ...[rowAt(0, 2), rowAt(60, 3), rowAt(120, 4), rowAt(180, 5)],
    ...[later(83, 6), later(143, 7), later(203, 8)],
  ]);
  expect(seconds).toEqual([0, 60, 120, 180, 203]);
  expect(causes(misses)).toEqual([
    [6, 'clock-set-back'],
    [7, 'clock-set-back'],
  ]);
});

test.each([
  [149, [0, 149, 150]],
  [90, [0, 90]],
  [91, [0, 50, 91]],
])('a late row fills a hole unless its neighbours at 0 and %d s stand too close', (second, seconds) => {
  const inHole = second === 149 ? 150 : 50;
  expect(arranged([rowAt(0, 2), rowAt(second, 3), later(inHole, 4)]).seconds).toEqual(seconds);
});

test('a row at the instant of another is no ground covered but the same row once more', () => {
  expect(causes(arranged([rowAt(0, 2), rowAt(60, 3), later(60, 4)]).misses)).toEqual([[4, 'duplicated']]);
});

test('an earlier part of the file is never judged by a later one', () => {
  expect(arranged([rowAt(0, 2), rowAt(200, 3), later(50, 4), later(100, 5)]).seconds).toEqual([
    0, 50, 100, 200,
  ]);
  expect(arranged([rowAt(75, 2), later(50, 4), later(100, 5)]).seconds).toEqual([50, 75, 100]);
});

test('without order every row has its place, but for times that the clocks show twice', () => {
  const rows = [rowAt(0, 2), rowAt(60, 3), later(30, 4), rowAt(90, 5, { repeated: true })];
  const { seconds, misses } = arranged(rows, { inOrder: false });
  expect(seconds).toEqual([0, 30, 60]);
  expect(causes(misses)).toEqual([[5, 'two-instants']]);
  expect(arranged(rows).seconds).toEqual([0, 60, 90]);
});

test('a file without a usual step keeps its rows', () => {
  expect(arranged([rowAt(0, 2), rowAt(60, 3), later(30, 4)], { usualStepMs: null }).seconds).toEqual([
    0, 30, 60,
  ]);
});

test('rows of one instant become one sample, the first in the file counting where they disagree', () => {
  const { samples, misses } = arranged([
    rowAt(0, 2, { values: { panOutletC: 40 }, pumpFraction: null }),
    rowAt(0, 3, { values: { flowLMin: 6 }, pumpFraction: 1, drainOpen: true }),
    rowAt(0, 4, { values: { panOutletC: 41 }, pumpFraction: null }),
    rowAt(0, 5, { values: {}, pumpFraction: 0 }),
    rowAt(0, 6, { values: {}, pumpFraction: 1, drainOpen: false }),
  ]);
  expect(samples).toMatchObject([
    { line: 2, values: { panOutletC: 40, flowLMin: 6 }, pumpFraction: 1, drainOpen: true },
  ]);
  expect(causes(misses)).toEqual([
    [3, 'duplicated'],
    [4, 'contested'],
    [5, 'contested'],
    [6, 'contested'],
  ]);
});
