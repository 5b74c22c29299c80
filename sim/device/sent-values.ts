import type { Channel } from '../../shared-types/channels.ts';
import type { SensorUnit } from '../../shared-types/sensor-units.ts';
import type { Sensor, Site } from '../../shared-types/site.ts';
import type { SensorValue, SensorValues } from '../plant/sensors.ts';

/** Sent number = inner value * factor + offset, as a sensor of that unit would say it. */
const outOfInner: Readonly<Record<SensorUnit, { readonly factor: number; readonly offset: number }>> = {
  C: { factor: 1, offset: 0 },
  K: { factor: 1, offset: 273.15 },
  F: { factor: 1.8, offset: 32 },
  'W/m2': { factor: 1, offset: 0 },
  'm/s': { factor: 1, offset: 0 },
  'km/h': { factor: 3.6, offset: 0 },
  mph: { factor: 3600 / 1609.344, offset: 0 },
  fraction: { factor: 1, offset: 0 },
  '%': { factor: 100, offset: 0 },
  'L/min': { factor: 1, offset: 0 },
  'L/s': { factor: 1 / 60, offset: 0 },
  'L/h': { factor: 60, offset: 0 },
  'm3/h': { factor: 0.06, offset: 0 },
  'gal/min': { factor: 1 / 3.785411784, offset: 0 },
  mm: { factor: 1, offset: 0 },
  cm: { factor: 0.1, offset: 0 },
  m: { factor: 0.001, offset: 0 },
  in: { factor: 1 / 25.4, offset: 0 },
  W: { factor: 1, offset: 0 },
  kW: { factor: 0.001, offset: 0 },
};

/** A reading as it leaves the device: in the sensor's unit, scale and zero, or what failed. */
export type SentValue = number | 'open-circuit' | 'short-circuit';

/** A value as the site's sensor would send it: the reverse of what a link does. */
function toSent(value: SensorValue, sensor: Sensor): SentValue {
  if (typeof value !== 'number') return value;
  const { factor, offset } = outOfInner[sensor.unit];
  return Number(((value * factor + offset - sensor.offset) / sensor.factor).toPrecision(9));
}

/** All readings as they leave, beside the sensor that says where they go. */
export function sentReadings(values: SensorValues, site: Site): (readonly [Channel, Sensor, SentValue])[] {
  return (Object.entries(values) as [Channel, SensorValue][]).flatMap(([channel, value]) => {
    const sensor = site.sensors[channel];
    return sensor === undefined ? [] : [[channel, sensor, toSent(value, sensor)] as const];
  });
}
