import type { ChannelUnit } from '../../../shared-types/channels.ts';
import { assertNever } from '../assert-never.ts';
import { differenceIn, heatIn, temperatureIn, temperatureSymbols, type Units } from './units.ts';

/** A number and its unit apart, so that a screen may set them in different sizes. */
export interface Quantity {
  readonly number: string;
  readonly unit: string;
}

const formats = new Map<string, Intl.NumberFormat>();

function decimal(locale: string | undefined, value: number, digits: number): string {
  const key = `${locale}/${digits}`;
  const known = formats.get(key);
  const format =
    known ?? new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits });
  if (known === undefined) formats.set(key, format);
  // Rounding -0.02 to one digit must not leave a minus before a nought.
  const rounded = Number(value.toFixed(digits));
  return format.format(rounded === 0 ? 0 : rounded);
}

/** Formats for one locale (undefined: the browser's) and one choice of units. */
export interface NumberFormats {
  temperature(valueC: number): Quantity;
  heat(valueJ: number): Quantity;
  /** Watts, or kilowatts from 1000 W on. */
  power(valueW: number): Quantity;
  channel(unit: ChannelUnit, value: number): Quantity;
  /** A temperature difference, from kelvin. */
  difference(valueK: number): Quantity;
  /** A number of a unit that nobody chooses. */
  measure(value: number, digits: number, unit: string): Quantity;
  /** Kilobytes to gigabytes, by thousands. */
  bytes(value: number): Quantity;
  percent(fraction: number): string;
  count(value: number): string;
}

export function numberFormats(units: Units, locale?: string): NumberFormats {
  const one = (value: number, digits: number, unit: string): Quantity => ({
    number: decimal(locale, value, digits),
    unit,
  });
  const temperature = (valueC: number) =>
    one(temperatureIn(units.temperature, valueC), 1, temperatureSymbols[units.temperature]);
  return {
    temperature,
    heat(valueJ) {
      const value = heatIn(units.heat, valueJ);
      return one(value, heatDigits(value), units.heat);
    },
    power: (valueW) => (Math.abs(valueW) < 1000 ? one(valueW, 0, 'W') : one(valueW / 1000, 1, 'kW')),
    channel(unit, value) {
      switch (unit) {
        case 'C':
          return temperature(value);
        case 'WM2':
          return one(value, 0, 'W/m²');
        case 'Ms':
          return one(value, 1, 'm/s');
        case 'Fraction':
          return one(value * 100, 0, '%');
        case 'LMin':
          return one(value, 1, 'L/min');
        case 'Mm':
          return one(value, 0, 'mm');
        case 'W':
          return one(value, 0, 'W');
        default:
          return assertNever(unit);
      }
    },
    difference: (valueK) =>
      one(differenceIn(units.temperature, valueK), 1, units.temperature === 'C' ? 'K' : '°F'),
    measure: one,
    bytes(value) {
      const step = byteSteps.find(({ from }) => value >= from) ?? smallestByteStep;
      return one(value / step.size, 1, step.unit);
    },
    percent: (fraction) => `${decimal(locale, fraction * 100, 0)} %`,
    count: (value) => decimal(locale, value, 0),
  };
}

const smallestByteStep = { from: 0, size: 1e3, unit: 'kB' };
const byteSteps = [
  { from: 1e9, size: 1e9, unit: 'GB' },
  { from: 1e6, size: 1e6, unit: 'MB' },
  smallestByteStep,
];

/** Small heats need more digits: a pump's day is some hundredths of a kilowatt hour. */
function heatDigits(value: number): number {
  const size = Math.abs(value);
  if (size >= 100) return 0;
  return size >= 10 || size === 0 ? 1 : 2;
}

/** Number and unit in one line, kept together by a narrow space that does not break. */
export function inLine({ number, unit }: Quantity): string {
  return unit === '' ? number : `${number}\u00a0${unit}`;
}
