import { type CsvRow, numberIn } from './csv-table.ts';
import type { FileValues } from './file-series.ts';
import type { Place } from './file-sun.ts';
import type { FileQuantity, WeatherFault } from './weather-file.ts';

/** Up to the wind every row must reach; what comes after may be missing. */
export const leastEpwColumns = 22;

interface EpwColumn {
  readonly quantity: FileQuantity;
  /** From 1, as the data dictionary counts. */
  readonly column: number;
  /** This and above means that the value is missing. */
  readonly missing: number;
  /** Into the unit inside. */
  readonly factor: number;
}

/** The columns that are read. Source: EnergyPlus Auxiliary Programs, EPW data dictionary. */
export const epwColumns: readonly EpwColumn[] = [
  { quantity: 'airC', column: 7, missing: 99.9, factor: 1 },
  { quantity: 'dewPointC', column: 8, missing: 99.9, factor: 1 },
  { quantity: 'humidityFraction', column: 9, missing: 999, factor: 0.01 },
  { quantity: 'longWaveWM2', column: 13, missing: 9999, factor: 1 },
  { quantity: 'irradianceWM2', column: 14, missing: 9999, factor: 1 },
  { quantity: 'directNormalWM2', column: 15, missing: 9999, factor: 1 },
  { quantity: 'diffuseWM2', column: 16, missing: 9999, factor: 1 },
  { quantity: 'windMs', column: 22, missing: 999, factor: 1 },
  { quantity: 'cloudFraction', column: 24, missing: 99, factor: 0.1 },
  { quantity: 'rainMm', column: 34, missing: 999, factor: 1 },
];

export interface EpwPlace extends Place {
  readonly zoneH: number;
}

/** Latitude, longitude, zone and height of the LOCATION line. */
export function epwPlace({ line, cells }: CsvRow): EpwPlace | WeatherFault {
  const bounds = [
    [6, -90, 90],
    [7, -180, 180],
    [8, -12, 14],
    [9, -1000, 9999.9],
  ] as const;
  const values = bounds.map(([index]) => numberIn(cells[index]));
  const wrong = bounds.findIndex(([, least, most], i) => {
    const value = values[i] as number;
    return !(value >= least && value <= most);
  });
  if (wrong >= 0) {
    const index = bounds[wrong]?.[0] ?? 0;
    return { cause: 'bad-location', line, column: index + 1, text: cells[index] ?? '' };
  }
  const [latitudeDeg = 0, longitudeDeg = 0, zoneH = 0, elevationM = 0] = values;
  return { latitudeDeg, longitudeDeg, zoneH, elevationM };
}

/** Minutes from midnight to the end of a row's interval, or what is wrong with its hour and minute. */
export function epwMinutes({ line, cells }: CsvRow, perHour: number): number | WeatherFault {
  const hour = numberIn(cells[3]);
  if (!(Number.isInteger(hour) && hour >= 1 && hour <= 24))
    return { cause: 'bad-time', line, column: 4, text: cells[3] ?? '' };
  if (perHour === 1) return hour * 60;
  const minute = numberIn(cells[4]);
  if (!(Number.isInteger(minute) && minute >= 0 && minute <= 60))
    return { cause: 'bad-time', line, column: 5, text: cells[4] ?? '' };
  return (hour - 1) * 60 + (minute === 0 ? 60 : minute);
}

/** The values of a row; a cell that is no number is a fault, an empty one or a missing code is no value. */
export function epwValues({ line, cells }: CsvRow, faults: WeatherFault[]): FileValues {
  const values: FileValues = {};
  for (const { quantity, column, missing, factor } of epwColumns) {
    const text = cells[column - 1] ?? '';
    if (text === '') continue;
    const value = numberIn(text);
    if (Number.isNaN(value)) faults.push({ cause: 'bad-number', line, column, text });
    else if (value < missing) values[quantity] = value * factor;
  }
  return values;
}
