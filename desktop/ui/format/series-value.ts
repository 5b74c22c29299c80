import { channelMeaning } from '../../../shared-types/channels.ts';
import type { SeriesName } from '../charts/series.ts';
import { inLine, type NumberFormats } from './numbers.ts';
import { heatIn, temperatureIn, type Units } from './units.ts';

/** A curve's value with its unit. */
export function seriesText(name: SeriesName, value: number, formats: NumberFormats): string {
  if (name === 'heatTodayJ') return inLine(formats.heat(value));
  if (name === 'pumpFraction') return formats.percent(value);
  return inLine(formats.channel(channelMeaning[name].unit, value));
}

/** A curve's value on the axis of its band, in the chosen units. */
export function seriesOnAxis(name: SeriesName, value: number, units: Units): number {
  if (name === 'heatTodayJ') return heatIn(units.heat, value);
  if (name === 'pumpFraction') return value * 100;
  const { unit } = channelMeaning[name];
  if (unit === 'C') return temperatureIn(units.temperature, value);
  return unit === 'Fraction' ? value * 100 : value;
}
