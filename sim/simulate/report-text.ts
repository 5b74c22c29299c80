import type { Harvest } from './harvest.ts';
import type { SpanReport } from './span.ts';

interface Column {
  readonly title: string;
  readonly unit: string;
  readonly value: (harvest: Harvest) => string;
}

const temperature = (valueC: number | null) => (valueC === null ? '-' : valueC.toFixed(0));

const columns: readonly Column[] = [
  { title: 'sun', unit: 'kWh/m2', value: (h) => h.sunKWhM2.toFixed(0) },
  { title: 'home', unit: 'kWh', value: (h) => h.homeKWh.toFixed(0) },
  { title: 'metered', unit: 'kWh', value: (h) => h.meteredKWh.toFixed(0) },
  { title: 'drawn', unit: 'kWh', value: (h) => h.drawnKWh.toFixed(0) },
  { title: 'electric', unit: 'kWh', value: (h) => h.electricityKWh.toFixed(1) },
  { title: 'pump', unit: 'h', value: (h) => h.pumpH.toFixed(0) },
  { title: 'starts', unit: '', value: (h) => String(h.starts) },
  { title: 'fills', unit: '', value: (h) => String(h.fills) },
  { title: 'alarms', unit: '', value: (h) => String(h.alarms) },
  { title: 'pan', unit: 'C from', value: (h) => temperature(h.lowestPanC) },
  { title: 'pan', unit: 'C to', value: (h) => temperature(h.highestPanC) },
  { title: 'sheet', unit: 'C to', value: (h) => temperature(h.highestSheetC) },
  { title: 'store', unit: 'C to', value: (h) => temperature(h.highestStoreC) },
  { title: 'ice', unit: 'kg to', value: (h) => h.mostIceKg.toFixed(1) },
];

const width = 9;

/** The report for people: a line a month, and the whole below. */
export function spanText({ site, draw, months, all, ...books }: SpanReport): string {
  const line = (first: string, cell: (column: Column) => string) =>
    first.padEnd(8) + columns.map((column) => cell(column).padStart(width)).join('');
  return [
    `${site}: ${all.days.toFixed(0)} simulated days, hot water drawn ${draw === 'none' ? 'by nobody' : `as in a ${draw}`}`,
    '',
    line('', ({ title }) => title),
    line('', ({ unit }) => unit),
    ...months.map((month) => line(month.month, ({ value }) => value(month))),
    ...(months.length > 1 ? [line('all', ({ value }) => value(all))] : []),
    '',
    `Unexplained: ${books.unexplainedHeatFraction.toExponential(1)} of the heat, ` +
      `${books.unexplainedWaterFraction.toExponential(1)} of the water.`,
  ].join('\n');
}
