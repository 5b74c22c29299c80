import type { SensorUnit } from '../../shared-types/site.ts';

/** Inner value = sent value * factor + offset. Definitions of the SI and of the degree Fahrenheit. */
const intoInner: Readonly<Record<SensorUnit, { readonly factor: number; readonly offset: number }>> = {
  C: { factor: 1, offset: 0 },
  K: { factor: 1, offset: -273.15 },
  F: { factor: 5 / 9, offset: -160 / 9 },
  'W/m2': { factor: 1, offset: 0 },
  'm/s': { factor: 1, offset: 0 },
  'km/h': { factor: 1 / 3.6, offset: 0 },
  fraction: { factor: 1, offset: 0 },
  '%': { factor: 0.01, offset: 0 },
  'L/min': { factor: 1, offset: 0 },
  'L/s': { factor: 60, offset: 0 },
  'm3/h': { factor: 1000 / 60, offset: 0 },
  mm: { factor: 1, offset: 0 },
  cm: { factor: 10, offset: 0 },
  m: { factor: 1000, offset: 0 },
  W: { factor: 1, offset: 0 },
  kW: { factor: 1000, offset: 0 },
};

/** A number as the sensor sends it, in the unit that the software uses for it inside. */
export function toInnerUnit(value: number, unit: SensorUnit): number {
  const { factor, offset } = intoInner[unit];
  return value * factor + offset;
}
