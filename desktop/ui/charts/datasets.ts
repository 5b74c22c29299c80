import type { ChartDataset } from 'chart.js';
import type { DayCurves } from '../../../shared-types/log.ts';
import { seriesOnAxis } from '../format/series-value.ts';
import type { Units } from '../format/units.ts';
import type { Scheme } from './colours.ts';
import { type SeriesName, seriesLooks, seriesTitle, seriesValues } from './series.ts';

export type TimePoint = { readonly x: number; readonly y: number | null };
export type TimeDataset = ChartDataset<'line', TimePoint[]> & { readonly series: SeriesName };

/** Shortest pause in the log that a chart shows as a gap [ms]. */
const leastGapMs = 300_000;

/**
 * Longest distance of two points that a line still bridges [ms]: clearly more than their usual
 * distance, which grows with the thinning of long spans.
 */
export function gapMs(atMs: readonly number[]): number {
  const distances = atMs.slice(1).map((at, index) => at - (atMs[index] as number));
  distances.sort((a, b) => a - b);
  const usualMs = distances[distances.length >> 1] ?? 0;
  return Math.max(leastGapMs, 4 * usualMs);
}

/** Curves as chart.js draws them; a missing value stays null, so that it becomes a gap. */
export function datasetsOf(
  curves: DayCurves,
  names: readonly SeriesName[],
  units: Units,
  scheme: Scheme,
): TimeDataset[] {
  const spanGaps = gapMs(curves.atMs);
  return names.map((name) => {
    const { band, colour, dash } = seriesLooks[name];
    const values = seriesValues(curves, name) ?? [];
    const stepped = name === 'pumpFraction';
    return {
      series: name,
      label: seriesTitle(name),
      data: curves.atMs.map((x, index) => {
        const value = values[index] ?? null;
        return { x, y: value === null ? null : seriesOnAxis(name, value, units) };
      }),
      yAxisID: band,
      borderColor: colour[scheme],
      backgroundColor: colour[scheme],
      borderDash: [...dash],
      borderWidth: 1.75,
      // A mitred corner of a noisy curve would stick out like a spike that nobody measured.
      borderJoinStyle: 'round',
      // Points on thousands of samples would take most of the drawing time.
      pointRadius: 0,
      pointHitRadius: 0,
      stepped,
      spanGaps,
    };
  });
}
