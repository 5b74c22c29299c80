import type { DayCurves } from '../../../shared-types/log.ts';

/**
 * The curves as comma-separated values (RFC 4180): a line for each instant, in UTC, and a column for each
 * curve with its unit in its name. What was not known is left empty.
 */
export function dayCsv({ atMs, series, pumpFraction, heatTodayJ }: DayCurves): string {
  const columns: [string, readonly (number | null)[]][] = [
    ...Object.entries(series),
    ['pumpFraction', pumpFraction],
    ['heatTodayJ', heatTodayJ],
  ];
  const head = ['timeUtc', ...columns.map(([name]) => name)];
  const rows = atMs.map((ms, row) => [
    new Date(ms).toISOString(),
    ...columns.map(([, values]) => String(values[row] ?? '')),
  ]);
  return [head, ...rows].map((cells) => `${cells.join(',')}\r\n`).join('');
}
