import type { ImportReport, MissCause } from './report.ts';

const causes: Readonly<Record<MissCause, string>> = {
  'not-a-time': 'no time in the format of the map',
  'skipped-by-clock': 'a time that the clocks skip',
  'not-a-number': 'no number',
  'out-of-range': 'outside what the sensor can truthfully report',
  'out-of-order': 'earlier than the row before',
  duplicated: 'the same instant once more',
  'not-csv': 'no CSV from here on',
};

/** What was understood, in lines for a terminal; text of the file stands in quotes, its control characters escaped. */
export function reportText(report: ImportReport): string {
  const { encoding, delimiter, decimal, rows, rowsTaken, firstMs, lastMs, usualStepMs } = report;
  const span =
    firstMs === null || lastMs === null
      ? 'no row was taken'
      : `from ${new Date(firstMs).toISOString()} to ${new Date(lastMs).toISOString()}`;
  return [
    `${rowsTaken} of ${rows} rows taken, ${span}`,
    `read as ${encoding}, cells split at ${JSON.stringify(delimiter)}, decimal mark ${decimal}`,
    `usual step ${usualStepMs === null ? 'unknown' : `${usualStepMs / 1000} s`}, ${report.gaps} gaps`,
    `${report.repeatedTimes} times of an hour that the clocks repeat`,
    ...Object.entries(report.values).map(([channel, count]) => `${channel}: ${count} values`),
    ...Object.entries(report.misses).map(([cause, count]) => `${count} × ${causes[cause as MissCause]}`),
    ...report.places.map(
      ({ line, column, text, cause }) =>
        `line ${line}, ${JSON.stringify(column)}: ${JSON.stringify(text)}, ${causes[cause]}`,
    ),
  ].join('\n');
}
