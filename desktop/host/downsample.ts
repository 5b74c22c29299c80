import type { DayCurves } from '../../shared-types/log.ts';

type Column = readonly (number | null)[];

/** Most points a curve travels with; a screen is hardly wider. */
const mostPoints = 3000;

/**
 * Thins curves that are longer than `most` points and keeps every spike.
 *
 * The rows are cut into `most / 2` buckets of equal count. Each bucket becomes two rows, at the
 * instants of its first and its last row; each column puts its least and its greatest value of the
 * bucket there, in the order in which they came. So a curve's extremes stay exact, their instants move
 * by less than a bucket, and a pause between rows stays as wide as it was. A column is null in a row
 * only when it is null in the whole bucket: a gap narrower than a bucket closes. (Common practice.)
 */
export function thinCurves(curves: DayCurves, most = mostPoints): DayCurves {
  const rows = curves.atMs.length;
  if (rows <= most) return curves;
  const buckets = bucketsOf(rows, Math.max(1, Math.floor(most / 2)));
  const thin = <Value extends number | null>(column: readonly Value[]) =>
    buckets.flatMap(([from, to]) => extremes(column, from, to) as [Value, Value]);
  return {
    ...curves,
    atMs: buckets.flatMap(([from, to]) => [curves.atMs[from] as number, curves.atMs[to - 1] as number]),
    series: Object.fromEntries(
      Object.entries(curves.series).map(([channel, column]) => [channel, thin(column)]),
    ),
    pumpFraction: thin(curves.pumpFraction),
    heatTodayJ: thin(curves.heatTodayJ),
  };
}

/** Cuts `rows` rows into `count` spans [from, to), each two rows or more as long as rows >= 2 count. */
function bucketsOf(rows: number, count: number): [number, number][] {
  const edge = (bucket: number) => Math.floor((bucket * rows) / count);
  return Array.from({ length: count }, (_, bucket) => [edge(bucket), edge(bucket + 1)]);
}

/** Least and greatest value of a span in the order in which they came; nulls count only alone. */
function extremes(column: Column, from: number, to: number): [number | null, number | null] {
  let least = -1;
  let greatest = -1;
  const at = (index: number) => column[index] as number;
  for (let index = from; index < to; index++) {
    if (column[index] === null) continue;
    if (least < 0 || at(index) < at(least)) least = index;
    if (greatest < 0 || at(index) >= at(greatest)) greatest = index;
  }
  if (least < 0) return [null, null];
  return least < greatest ? [at(least), at(greatest)] : [at(greatest), at(least)];
}
