import type { ChannelUnit } from './channels.ts';

interface WrittenUnit {
  /** The unit inside that it becomes. */
  readonly into: ChannelUnit;
  readonly factor: number;
  readonly offset: number;
}

const times = (factor: number, into: ChannelUnit): WrittenUnit => ({ into, factor, offset: 0 });

/**
 * Units that a sensor may send or another logger may write: inner value = written value * factor + offset.
 *
 * Definitions of the SI, of the degree Fahrenheit, of the inch (25.4 mm), the mile (1609.344 m) and the US gallon
 * (231 cubic inches), all exact: NIST SP 811, from memory.
 */
export const sensorUnits = {
  C: times(1, 'C'),
  K: { into: 'C', factor: 1, offset: -273.15 },
  F: { into: 'C', factor: 5 / 9, offset: -160 / 9 },
  'W/m2': times(1, 'WM2'),
  'm/s': times(1, 'Ms'),
  'km/h': times(1 / 3.6, 'Ms'),
  mph: times(0.44704, 'Ms'),
  fraction: times(1, 'Fraction'),
  '%': times(0.01, 'Fraction'),
  'L/min': times(1, 'LMin'),
  'L/s': times(60, 'LMin'),
  'L/h': times(1 / 60, 'LMin'),
  'm3/h': times(1000 / 60, 'LMin'),
  'gal/min': times(3.785411784, 'LMin'),
  mm: times(1, 'Mm'),
  cm: times(10, 'Mm'),
  m: times(1000, 'Mm'),
  in: times(25.4, 'Mm'),
  W: times(1, 'W'),
  kW: times(1000, 'W'),
} as const satisfies Record<string, WrittenUnit>;

export type SensorUnit = keyof typeof sensorUnits;
export const sensorUnitNames = Object.keys(sensorUnits) as [SensorUnit, ...SensorUnit[]];

/** A number as it was written, in the unit that the software uses for it inside. */
export function toInnerUnit(value: number, unit: SensorUnit): number {
  const { factor, offset } = sensorUnits[unit];
  return value * factor + offset;
}
