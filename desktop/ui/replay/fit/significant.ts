import { type Channel, type ChannelUnit, channelMeaning } from '../../../../shared-types/channels.ts';
import { differenceIn, type TemperatureUnit } from '../../format/units.ts';

/** Digits that are shown of a fitted number: more would say more than is known. A design choice. */
const shownDigits = 3;

/** A number with its unit to three digits that count; a unit of 1 is left out. */
export function significant(value: number, unit: string): string {
  const number = new Intl.NumberFormat(undefined, { maximumSignificantDigits: shownDigits }).format(value);
  return unit === '' || unit === '1' ? number : `${number}\u00a0${unit}`;
}

/** A number to a hundredth of the size of another: what is smaller beside that is nought. */
export function besideSize(value: number, size: number): number {
  if (!(size > 0)) return value;
  const step = 10 ** (Math.floor(Math.log10(size)) - 2);
  return Math.round(value / step) * step + 0;
}

const isChannel = (name: string): name is Channel => Object.hasOwn(channelMeaning, name);

/** A difference of what a channel shows. */
export function differenceText(name: string, value: number, temperature: TemperatureUnit): string {
  const unit = isChannel(name) ? channelMeaning[name].unit : undefined;
  if (unit === 'C') return significant(differenceIn(temperature, value), temperature === 'C' ? 'K' : '°F');
  return significant(value, unit === undefined ? '' : (symbols[unit] ?? ''));
}

const symbols: Readonly<Partial<Record<ChannelUnit, string>>> = {
  LMin: 'L/min',
  WM2: 'W/m²',
  W: 'W',
  Mm: 'mm',
  Ms: 'm/s',
};
