import { type ChannelUnit, channelMeaning } from '../../../shared-types/channels.ts';
import type { DayCurves, DaySummary } from '../../../shared-types/log.ts';
import { presentSeries, type SeriesName, seriesTitle, seriesValues } from '../charts/series.ts';
import { type CsvCell, rounded } from '../format/csv.ts';
import { seriesOnAxis } from '../format/series-value.ts';
import { heatIn, temperatureSymbols, type Units } from '../format/units.ts';
import { phaseAt } from '../replay/scrub.ts';
import { en } from '../text/en.ts';

const text = en.days.table;

type Table = readonly (readonly CsvCell[])[];

/** Symbols of the units that nobody chooses. */
const fixedSymbols: Readonly<Record<Exclude<ChannelUnit, 'C'>, string>> = {
  WM2: 'W/m²',
  Ms: 'm/s',
  Fraction: '%',
  LMin: 'L/min',
  Mm: 'mm',
  W: 'W',
};

/** Unit of a curve as it stands in a file, in the chosen units. */
export function seriesUnit(name: SeriesName, units: Units): string {
  if (name === 'pumpFraction') return '%';
  if (name === 'heatTodayJ') return units.heat;
  const { unit } = channelMeaning[name];
  return unit === 'C' ? temperatureSymbols[units.temperature] : fixedSymbols[unit];
}

/** Instants in UTC as RFC 3339 writes them. */
const utcText = (atMs: number) => new Date(atMs).toISOString();

/** A day step by step: UTC time, zone, every curve with its unit, phase and reason. */
export function dayTable(curves: DayCurves, timeZone: string, units: Units): Table {
  const names = presentSeries(curves);
  const columns = names.map((name) => seriesValues(curves, name) ?? []);
  const head = [
    text.time,
    text.zone,
    ...names.map((name) => `${seriesTitle(name)} [${seriesUnit(name, units)}]`),
    text.phase,
    text.reason,
  ];
  const rows = curves.atMs.map((atMs, row) => {
    const span = phaseAt(curves.phases, atMs);
    const values = names.map((name, index) => {
      const value = columns[index]?.[row] ?? null;
      return value === null ? null : rounded(seriesOnAxis(name, value, units), 4);
    });
    const phase = span === undefined ? null : en.phases[span.phase];
    return [utcText(atMs), timeZone, ...values, phase, span === undefined ? null : en.reasons[span.reason]];
  });
  return [head, ...rows];
}

/** Every logged day in one row. */
export function daysTable(days: readonly DaySummary[], timeZone: string, units: Units): Table {
  const { columns } = en.days;
  const heat = (title: string) => `${title} [${units.heat}]`;
  const head = [
    columns.day,
    text.zone,
    text.first,
    text.last,
    heat(columns.heatHome),
    heat(columns.heatLost),
    heat(columns.pumpEnergy),
    `${columns.runTime} [s]`,
    columns.starts,
    columns.fills,
    columns.alarms,
    `${columns.logged} [%]`,
  ];
  const rows = days.map((one) => [
    one.day,
    timeZone,
    utcText(one.firstMs),
    utcText(one.lastMs),
    ...[one.heatHomeJ, one.heatLostJ, one.electricityJ].map((valueJ) =>
      valueJ === null ? null : rounded(heatIn(units.heat, valueJ), 4),
    ),
    rounded(one.pumpRunS, 1),
    one.starts,
    one.fills,
    one.alarms,
    // Rounded down: what is not whole must not read as 100 %.
    Math.floor(one.coveredFraction * 1000) / 10,
  ]);
  return [head, ...rows];
}
