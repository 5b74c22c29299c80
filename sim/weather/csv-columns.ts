import { numberIn } from './csv-table.ts';
import type { FileValues } from './file-series.ts';
import type { WeatherCsvMap } from './weather-csv-map.ts';
import type { FileQuantity, WeatherFault } from './weather-file.ts';

interface CsvColumn {
  readonly quantity: FileQuantity;
  readonly index: number;
  /** Into the unit inside, over an interval of so many seconds. */
  readonly convert: (value: number, stepS: number) => number;
}

export interface CsvLayout {
  readonly timeIndex: number;
  readonly columns: readonly CsvColumn[];
}

const quantityOf = {
  air: 'airC',
  dewPoint: 'dewPointC',
  humidity: 'humidityFraction',
  wind: 'windMs',
  irradiance: 'irradianceWM2',
  directNormal: 'directNormalWM2',
  diffuse: 'diffuseWM2',
  longWave: 'longWaveWM2',
  cloud: 'cloudFraction',
  sunshine: 'sunshineH',
  rain: 'rainMm',
  snow: 'snowMm',
} as const satisfies Record<Exclude<keyof WeatherCsvMap, 'time'>, FileQuantity>;

type Unit = NonNullable<WeatherCsvMap[keyof typeof quantityOf]>['unit'];

/** How each unit becomes the one inside: C, fraction, m/s, mean W/m2, mm and h in the interval. */
const converters: Readonly<Record<Unit, CsvColumn['convert']>> = {
  C: (value) => value,
  K: (value) => value - 273.15,
  F: (value) => (value - 32) / 1.8,
  fraction: (value) => value,
  '%': (value) => value / 100,
  'm/s': (value) => value,
  'km/h': (value) => value / 3.6,
  'W/m2': (value) => value,
  'Wh/m2': (value, stepS) => (value * 3600) / stepS,
  'kJ/m2': (value, stepS) => (value * 1e3) / stepS,
  'MJ/m2': (value, stepS) => (value * 1e6) / stepS,
  mm: (value) => value,
  cm: (value) => value * 10,
  'mm/h': (value, stepS) => (value * stepS) / 3600,
  h: (value) => value,
  min: (value) => value / 60,
};

/** Finds the columns of the map in the header line; a name is taken as it stands, letter by letter. */
export function csvLayout(
  header: readonly string[],
  map: WeatherCsvMap,
): CsvLayout | readonly WeatherFault[] {
  const faults: WeatherFault[] = [];
  const find = (name: string) => {
    const index = header.indexOf(name);
    if (index < 0) faults.push({ cause: 'column-missing', name, known: header });
    else if (header.lastIndexOf(name) !== index) faults.push({ cause: 'column-twice', name });
    return index;
  };
  const timeIndex = find(map.time.column);
  const columns: CsvColumn[] = [];
  for (const key of Object.keys(quantityOf) as (keyof typeof quantityOf)[]) {
    const wanted = map[key];
    if (wanted === undefined) continue;
    const index = find(wanted.column);
    columns.push({ quantity: quantityOf[key], index, convert: converters[wanted.unit] });
  }
  return faults.length > 0 ? faults : { timeIndex, columns };
}

/** The values of a row; a cell that is no number is a fault, an empty one is no value. */
export function csvValues(
  line: number,
  cells: readonly string[],
  layout: CsvLayout,
  stepS: number,
  faults: WeatherFault[],
): FileValues {
  const values: FileValues = {};
  for (const { quantity, index, convert } of layout.columns) {
    const text = cells[index] ?? '';
    if (text === '') continue;
    const value = numberIn(text);
    if (Number.isNaN(value)) faults.push({ cause: 'bad-number', line, column: index + 1, text });
    else values[quantity] = convert(value, stepS);
  }
  return values;
}
