import type { SensorFault } from '../../shared-types/readings.ts';
import { toInnerUnit } from '../../shared-types/sensor-units.ts';
import type { Sensor } from '../../shared-types/site.ts';

/** What a sensor said, in the channel's unit; a fault stands in place of a value. */
export interface SensorValue {
  readonly value: number | null;
  readonly fault?: SensorFault;
}

/** Beyond this no sensor of a loop speaks, whatever its unit: the number is rubbish, not a reading. */
const absurd = 1e9;
const numberForm = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;

/**
 * Reads what a sensor sent: a number, or a text that is one.
 *
 * @returns undefined when it is neither, not finite, or beyond 1e9 in magnitude.
 */
export function readSensor(sent: unknown, sensor: Sensor): SensorValue | undefined {
  const number = toNumber(sent);
  if (number === undefined) return undefined;
  const fault = faultOf(number, sensor);
  if (fault !== undefined) return { value: null, fault };
  const value = toInnerUnit(number * sensor.factor + sensor.offset, sensor.unit);
  return Math.abs(value) <= absurd ? { value } : undefined;
}

/** A finite number, or a text that is nothing but one; undefined otherwise. */
export function toNumber(sent: unknown): number | undefined {
  const number = typeof sent === 'string' && numberForm.test(sent.trim()) ? Number(sent) : sent;
  return typeof number === 'number' && Math.abs(number) <= absurd ? number : undefined;
}

/** The codes stand for themselves, before factor and offset. */
function faultOf(number: number, sensor: Sensor): SensorFault | undefined {
  if (number === sensor.openCode) return 'open-circuit';
  if (number === sensor.shortCode) return 'short-circuit';
  return number === sensor.unreadableCode ? 'unreadable' : undefined;
}
