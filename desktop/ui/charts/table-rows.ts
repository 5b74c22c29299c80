import type { DayCurves } from '../../../shared-types/log.ts';
import { nearestIndex } from '../replay/scrub.ts';
import { type SeriesName, seriesValues } from './series.ts';

export interface TableRow {
  readonly atMs: number;
  readonly values: readonly (number | null)[];
}

const stepsMs = [5, 10, 15, 30, 60].map((minutes) => minutes * 60_000);

/** Step of a table about a span of time, so that it stays within some 26 rows [ms]. */
export function tableStepMs(spanMs: number): number {
  return stepsMs.find((stepMs) => spanMs / stepMs <= 26) ?? (stepsMs.at(-1) as number);
}

/**
 * The curves as a table: at each step the values of the nearest row, provided that it lies within
 * half a step. Where nothing was logged there is no row.
 */
export function tableRows(curves: DayCurves, names: readonly SeriesName[], stepMs: number): TableRow[] {
  const firstMs = curves.atMs[0];
  const lastMs = curves.atMs.at(-1);
  if (firstMs === undefined || lastMs === undefined) return [];
  const rows: TableRow[] = [];
  for (let atMs = Math.ceil(firstMs / stepMs) * stepMs; atMs <= lastMs; atMs += stepMs) {
    const index = nearestIndex(curves.atMs, atMs);
    if (Math.abs((curves.atMs[index] as number) - atMs) > stepMs / 2) continue;
    rows.push({ atMs, values: names.map((name) => seriesValues(curves, name)?.[index] ?? null) });
  }
  return rows;
}
