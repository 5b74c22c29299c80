import { type Channel, type ChannelUnit, channelMeaning } from '../../shared-types/channels.ts';
import type { foreignUnits } from './map.ts';

export type ForeignUnit = (typeof foreignUnits)[number];

interface Conversion {
  readonly into: ChannelUnit;
  readonly factor: number;
  readonly offset: number;
}

const scale = (into: ChannelUnit, factor: number): Conversion => ({ into, factor, offset: 0 });

/**
 * Inner value = written value * factor + offset. Definitions of the SI, of the degree Fahrenheit, of the inch
 * (25.4 mm), the mile (1609.344 m) and the US gallon (231 cubic inches): exact, NIST SP 811.
 */
const conversions: Readonly<Record<ForeignUnit, Conversion>> = {
  C: scale('C', 1),
  F: { into: 'C', factor: 5 / 9, offset: -160 / 9 },
  K: { into: 'C', factor: 1, offset: -273.15 },
  'L/min': scale('LMin', 1),
  'L/s': scale('LMin', 60),
  'L/h': scale('LMin', 1 / 60),
  'm3/h': scale('LMin', 1000 / 60),
  'gal/min': scale('LMin', 3.785411784),
  'W/m2': scale('WM2', 1),
  'm/s': scale('Ms', 1),
  'km/h': scale('Ms', 1 / 3.6),
  mph: scale('Ms', 0.44704),
  fraction: scale('Fraction', 1),
  '%': scale('Fraction', 0.01),
  mm: scale('Mm', 1),
  cm: scale('Mm', 10),
  m: scale('Mm', 1000),
  in: scale('Mm', 25.4),
  W: scale('W', 1),
  kW: scale('W', 1000),
};

/** A converter into the channel's unit; undefined when the unit measures something else. */
export function converterOf(unit: ForeignUnit, channel: Channel): ((value: number) => number) | undefined {
  const found = conversions[unit];
  if (found.into !== channelMeaning[channel].unit) return undefined;
  return (value) => value * found.factor + found.offset;
}
