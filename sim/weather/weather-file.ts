import type { Weather } from './weather.ts';

/** Quantities that a weather file may hold, by their names inside. */
export const fileQuantities = [
  'airC',
  'dewPointC',
  'humidityFraction',
  'windMs',
  'irradianceWM2',
  'directNormalWM2',
  'diffuseWM2',
  'longWaveWM2',
  'cloudFraction',
  'sunshineH',
  'rainMm',
  'snowMm',
] as const;
export type FileQuantity = (typeof fileQuantities)[number];

/** What a reader mended in a file, how often, and where first. Lines count from 1. */
export type RepairKind =
  | 'value-missing'
  | 'row-missing'
  | 'row-duplicated'
  | 'row-out-of-order'
  | 'leap-day-left-out'
  | 'clock-hour-repeated'
  | 'clock-hour-skipped'
  | 'brighter-than-space'
  | 'sun-at-night'
  | 'parts-disagree'
  | 'negative-radiation'
  | 'damper-than-saturated'
  | 'out-of-range'
  | 'diffuse-split-by-clearness'
  | 'long-wave-by-formula'
  | 'place-differs';

export interface Repair {
  readonly what: RepairKind;
  readonly count: number;
  readonly firstLine: number;
}

/** Why a file cannot be used. Lines and columns count from 1. */
export type WeatherFault =
  | { readonly cause: 'empty' }
  | { readonly cause: 'not-text'; readonly line: number; readonly column: number }
  | {
      readonly cause: 'not-csv';
      readonly line: number;
      readonly column: number;
      readonly detail: 'open-quote' | 'stray-quote' | 'other';
    }
  | { readonly cause: 'no-location'; readonly line: number }
  | { readonly cause: 'bad-location'; readonly line: number; readonly column: number; readonly text: string }
  | { readonly cause: 'no-rows'; readonly line: number }
  | {
      readonly cause: 'too-few-columns';
      readonly line: number;
      readonly seen: number;
      readonly needed: number;
    }
  | { readonly cause: 'column-missing'; readonly name: string; readonly known: readonly string[] }
  | { readonly cause: 'column-twice'; readonly name: string }
  | { readonly cause: 'bad-number'; readonly line: number; readonly column: number; readonly text: string }
  | { readonly cause: 'bad-time'; readonly line: number; readonly column: number; readonly text: string }
  | { readonly cause: 'bad-zone'; readonly zone: string }
  | { readonly cause: 'uneven-steps'; readonly line: number; readonly stepMs: number }
  | {
      readonly cause: 'gap-too-long';
      readonly line: number;
      readonly hours: number;
      readonly quantity: FileQuantity;
    }
  | { readonly cause: 'nothing-in-column'; readonly quantity: FileQuantity }
  | {
      readonly cause: 'unit-suspect';
      readonly quantity: FileQuantity;
      readonly line: number;
      readonly looksLike: UnitGuess;
    }
  | { readonly cause: 'clock-suspect'; readonly lateHours: number };

/** What a column that cannot be in its stated unit looks like instead. */
export type UnitGuess =
  | 'fahrenheit'
  | 'kelvin'
  | 'kilojoules'
  | 'km/h'
  | 'fraction'
  | 'percent'
  | 'too-large'
  | 'too-small';

export type WeatherFile =
  | { readonly ok: true; readonly value: { readonly weather: Weather; readonly repairs: readonly Repair[] } }
  | { readonly ok: false; readonly faults: readonly WeatherFault[] };
