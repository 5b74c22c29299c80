import type { ImportReport, MissCause } from '../../shared-types/foreign-log.ts';

const causes: Readonly<Record<MissCause, string>> = {
  'not-a-time': 'no time in the format of the map',
  'skipped-by-clock': 'a time that the clocks skip',
  'far-away': 'a time before 1980 or after 2199: another format?',
  'not-a-number': 'no number',
  'not-a-state': 'neither on nor off',
  'out-of-range': 'outside what the sensor can truthfully report',
  'out-of-order': 'earlier than the row before, put where it belongs',
  duplicated: 'the same instant once more',
  contested: 'the same instant with other values, the first was kept',
  'clock-set-back': 'written after the clock was set back over ground already covered, left out',
  'two-instants': 'a time that the clocks show twice, in a file without order, left out',
  'no-pump': 'nothing tells whether the pump ran, left out',
  'no-value': 'no value in any column of the map, left out',
  'not-csv': 'no CSV from here on',
};

/** What was understood, in lines for a terminal; text of the file stands in quotes, its control characters escaped. */
export function reportText(report: ImportReport): string {
  const { encoding, delimiter, decimal, rows, rowsTaken, firstMs, lastMs, usualStepMs } = report;
  const span =
    firstMs === null || lastMs === null
      ? 'no row was understood'
      : `from ${new Date(firstMs).toISOString()} to ${new Date(lastMs).toISOString()}`;
  return [
    `${rowsTaken} of ${rows} rows taken, ${span}`,
    `read as ${encoding}, cells split at ${JSON.stringify(delimiter)}, decimal mark ${decimal}`,
    `usual step ${usualStepMs === null ? 'unknown' : `${usualStepMs / 1000} s`}, ${report.gaps} gaps`,
    `${report.repeatedTimes} times of an hour that the clocks repeat`,
    ...Object.entries(report.values).map(([channel, count]) => `${channel}: ${count} values`),
    `${report.days} days, the heat of ${report.daysWithHeat} of them can be told`,
    newsText(report),
    ...Object.entries(report.misses).map(([cause, count]) => `${count} × ${causes[cause as MissCause]}`),
    ...report.places.map(
      ({ line, column, text, cause }) =>
        `line ${line}, ${JSON.stringify(column)}: ${JSON.stringify(text)}, ${causes[cause]}`,
    ),
  ].join('\n');
}

function newsText({ stepsAdded, stepsChanged, daysChanged }: ImportReport): string {
  if (stepsAdded + stepsChanged === 0) return 'nothing of it is new';
  return `new: ${stepsAdded} steps, ${stepsChanged} more with another value, on ${daysChanged} days`;
}
