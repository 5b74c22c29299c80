import type { Totals } from '../../shared-types/engine.ts';
import type { DaySummary, ReplayReport } from '../../shared-types/log.ts';
import { localDayTime, localTime } from './remarks.ts';

const kWh = (joules: number) => (joules / 3.6e6).toFixed(3);

interface Row {
  readonly title: string;
  readonly unit: string;
  readonly value: (totals: Totals) => string;
}

const rows: readonly Row[] = [
  { title: 'Heat home', unit: 'kWh', value: (t) => kWh(t.heatHomeJ) },
  { title: 'Heat lost', unit: 'kWh', value: (t) => kWh(t.heatLostJ) },
  { title: 'Electricity', unit: 'kWh', value: (t) => kWh(t.electricityJ) },
  { title: 'Pump ran', unit: 'h', value: (t) => (t.pumpRunS / 3600).toFixed(2) },
  { title: 'Starts', unit: '', value: (t) => String(t.starts) },
  { title: 'Fills', unit: '', value: (t) => String(t.fills) },
];

/** The report for people. */
export function reportText(report: ReplayReport, timeZone: string): string {
  const moment = (atMs: number) => (report.day === report.lastDay ? localTime : localDayTime)(atMs, timeZone);
  return [
    verdict(report),
    '',
    `  ${''.padEnd(14)}${'logged'.padStart(10)}${'replayed'.padStart(10)}`,
    ...rows.map(({ title, unit, value }) =>
      `  ${title.padEnd(14)}${value(report.logged).padStart(10)}${value(report.replayed).padStart(10)} ${unit}`.trimEnd(),
    ),
    ...firstLines(report, moment),
    ...countLines(report),
    ...partedLines(report, moment),
    ...(report.remarks.length === 0 ? [] : ['', 'Remarks:', ...report.remarks.map((text) => `  - ${text}`)]),
  ].join('\n');
}

function verdict(report: ReplayReport): string {
  const { day, lastDay, steps, leftOut, same, differences, decidedOtherwise, engineNow } = report;
  const span = day === lastDay ? day : `${day} to ${lastDay}`;
  if (same) return `${span}: all ${steps} steps decided the same (engine ${engineNow}).`;
  if (differences === 0)
    return `${span}: no difference in ${steps} steps, but ${leftOut} could not be replayed.`;
  const totalsOnly = differences - decidedOtherwise;
  const further = totalsOnly === 0 ? '' : `, and in ${totalsOnly} more the totals differ`;
  return `${span}: ${decidedOtherwise} of ${steps} steps decided otherwise (engine ${engineNow})${further}.`;
}

type InWords = (atMs: number) => string;

function firstLines({ firstDifference }: ReplayReport, moment: InWords): string[] {
  if (firstDifference === null) return [];
  const { atMs, step, fields, loggedReason, replayedReason, input } = firstDifference;
  const readings = Object.entries(input.readings).map(
    ([channel, { value }]) => `${channel} ${value ?? 'none'}`,
  );
  return [
    '',
    `First difference at ${moment(atMs)}, step ${step}: ${fields.join(', ')}`,
    `  then: ${loggedReason}`,
    `  now:  ${replayedReason}`,
    `  given: ${readings.join(', ')}`,
  ];
}

/** How many steps differ in what, and by which reasons. */
function countLines({ byField, byCause }: ReplayReport): string[] {
  const fields = Object.entries(byField).sort(([, a], [, b]) => b - a);
  if (fields.length === 0) return [];
  const cause = (logged: string, replayed: string) =>
    logged === replayed ? logged : `${logged} -> ${replayed}`;
  return [
    '',
    'Steps that differ, by field:',
    ...fields.map(([field, steps]) => `  ${String(steps).padStart(8)}  ${field}`),
    'and by reason, then -> now:',
    ...byCause.map(
      ({ logged, replayed, steps }) => `  ${String(steps).padStart(8)}  ${cause(logged, replayed)}`,
    ),
  ];
}

/** So many stretches are printed; the report for machines has more. */
const mostPrinted = 10;

/** Where the loop would have been driven otherwise, and what that does. */
function partedLines({ parted, partings, asked }: ReplayReport, moment: InWords): string[] {
  if (partings === 0) return [];
  const side = ({ starts, fills, pumpRunS }: ReplayReport['asked']['logged']) =>
    `${starts} starts, ${fills} fills, ${(pumpRunS / 3600).toFixed(2)} h of pumping`;
  const shown = parted.slice(0, mostPrinted);
  return [
    '',
    `The loop would have been driven otherwise in ${partings} ${partings === 1 ? 'stretch' : 'stretches'}.`,
    `  asked then: ${side(asked.logged)}`,
    `  asked now:  ${side(asked.replayed)}`,
    ...shown.flatMap(({ fromMs, toMs, steps, logged, replayed }) => [
      `  ${moment(fromMs)} to ${moment(toMs)}, ${steps} steps`,
      `    then: ${logged.reason}`,
      `    now:  ${replayed.reason}`,
    ]),
    ...(partings > shown.length ? [`  and ${partings - shown.length} more.`] : []),
    '  Readings answer to what was decided then: the longer a stretch, the less it tells.',
  ];
}

/** A dash where nobody can tell. */
const orNone = (value: number | null, text: (value: number) => string) =>
  value === null ? '-' : text(value);

/** The days of a log, for people. */
export function dayList(days: readonly DaySummary[]): string {
  const lines = days.map(
    (day) =>
      `${day.day}  ${orNone(day.heatHomeJ, kWh).padStart(8)} kWh home  ${orNone(day.fills, String).padStart(3)} fills  ` +
      `${(day.coveredFraction * 100).toFixed(0).padStart(3)} % covered${day.imported ? '  imported' : ''}`,
  );
  return lines.join('\n');
}
