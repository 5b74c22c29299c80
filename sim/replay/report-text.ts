import type { Totals } from '../../shared-types/engine.ts';
import type { DaySummary, ReplayReport } from '../../shared-types/log.ts';
import { localTime } from './remarks.ts';

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
  return [
    verdict(report),
    '',
    `  ${''.padEnd(14)}${'logged'.padStart(10)}${'replayed'.padStart(10)}`,
    ...rows.map(({ title, unit, value }) =>
      `  ${title.padEnd(14)}${value(report.logged).padStart(10)}${value(report.replayed).padStart(10)} ${unit}`.trimEnd(),
    ),
    ...differenceLines(report, timeZone),
    ...(report.remarks.length === 0 ? [] : ['', 'Remarks:', ...report.remarks.map((text) => `  - ${text}`)]),
  ].join('\n');
}

function verdict({ day, steps, same, differences, engineNow }: ReplayReport): string {
  if (same) return `${day}: all ${steps} steps decided the same (engine ${engineNow}).`;
  if (differences === 0) return `${day}: no difference in ${steps} steps, but some could not be replayed.`;
  return `${day}: ${differences} of ${steps} steps decided otherwise (engine ${engineNow}).`;
}

function differenceLines({ firstDifference }: ReplayReport, timeZone: string): string[] {
  if (firstDifference === null) return [];
  const { atMs, step, fields, loggedReason, replayedReason, input } = firstDifference;
  const readings = Object.entries(input.readings).map(
    ([channel, { value }]) => `${channel} ${value ?? 'none'}`,
  );
  return [
    '',
    `First difference at ${localTime(atMs, timeZone)}, step ${step}: ${fields.join(', ')}`,
    `  then: ${loggedReason}`,
    `  now:  ${replayedReason}`,
    `  given: ${readings.join(', ')}`,
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
