import { describe, expect, it } from 'vitest';
import { readSensor } from '../../../controller/links/sensor-value.ts';
import type { SensorUnit } from '../../../shared-types/sensor-units.ts';
import { type Sensor, sensorSchema } from '../../../shared-types/site.ts';

const sensor = (unit: SensorUnit, more: Partial<Sensor> = {}): Sensor =>
  sensorSchema.parse({ unit, ...more });

describe('sensor value', () => {
  // Fixed points of the units, from their definitions (SI brochure; 212 °F and 32 °F for the degree Fahrenheit;
  // mile, gallon and inch: NIST SP 811, from memory).
  it.each<[number, SensorUnit, number]>([
    [100, 'C', 100],
    [273.15, 'K', 0],
    [373.15, 'K', 100],
    [32, 'F', 0],
    [212, 'F', 100],
    [-40, 'F', -40],
    [850, 'W/m2', 850],
    [3, 'm/s', 3],
    [36, 'km/h', 10],
    [1, 'mph', 0.44704],
    [0.5, 'fraction', 0.5],
    [55, '%', 0.55],
    [24, 'L/min', 24],
    [0.4, 'L/s', 24],
    [1.44, 'm3/h', 24],
    [60, 'L/h', 1],
    [1, 'gal/min', 3.785411784],
    [40, 'mm', 40],
    [4, 'cm', 40],
    [0.04, 'm', 40],
    [1, 'in', 25.4],
    [60, 'W', 60],
    [0.06, 'kW', 60],
  ])('%d %s is %d inside', (sent, unit, inner) => {
    expect(readSensor(sent, sensor(unit))?.value).toBeCloseTo(inner, 9);
  });

  it('applies the factor, then the offset, then the unit', () => {
    expect(readSensor(250, sensor('F', { factor: 0.1, offset: 7 }))?.value).toBeCloseTo(0, 9);
  });

  it.each(['41.5', ' 41.5 ', '+41.5', '4.15e1', '41.50'])("takes the text '%s' as its number", (sent) => {
    expect(readSensor(sent, sensor('C'))).toEqual({ value: 41.5 });
  });

  it.each([
    Number.NaN,
    Number.POSITIVE_INFINITY,
    1e10,
    -1e10,
    'NaN',
    'nan',
    'Infinity',
    '',
    ' ',
    '41,5',
    '0x10',
    '1e400',
    '12 C',
    'unavailable',
    null,
    undefined,
    true,
    [],
    {},
    [41.5],
  ])('takes %j for no reading', (sent) => {
    expect(readSensor(sent, sensor('C'))).toBeUndefined();
  });

  it('takes a number that its factor makes absurd for no reading', () => {
    expect(readSensor(1e8, sensor('C', { factor: 1000 }))).toBeUndefined();
  });

  const coded = sensor('C', { factor: 0.1, openCode: 32767, shortCode: -32768, unreadableCode: 850 });
  it.each([
    [32767, 'open-circuit'],
    ['32767', 'open-circuit'],
    [-32768, 'short-circuit'],
    [850, 'unreadable'],
  ])('knows the code %s before any conversion', (sent, fault) => {
    expect(readSensor(sent, coded)).toEqual({ value: null, fault });
  });
  it('takes the neighbours of a code as readings', () => {
    expect(readSensor(851, coded)?.value).toBeCloseTo(85.1, 9);
    expect(readSensor(849, coded)?.value).toBeCloseTo(84.9, 9);
  });
});
