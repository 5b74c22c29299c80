import type { Channel } from '../../shared-types/channels.ts';
import type { Sensor, Site } from '../../shared-types/site.ts';
import { atPointer } from './json-pointer.ts';
import type { FeedbackValue } from './reading-shelf.ts';
import { readSensor, type SensorValue, toNumber } from './sensor-value.ts';

/** What one MQTT message meant. `faults` name what in it could not be used. */
interface Meaning {
  readonly readings: readonly (readonly [Channel, SensorValue])[];
  readonly feedback: FeedbackValue | null;
  readonly faults: readonly string[];
}

export interface MessageMapping {
  readonly topics: readonly string[];
  read(topic: string, payload: Uint8Array, retained: boolean): Meaning;
}

type FeedbackPlace = NonNullable<Extract<Site['link'], { kind: 'mqtt' }>['feedback']>;

/** Longest payload that is looked at. */
export const maximumPayloadBytes = 65_536;
const utf8 = new TextDecoder('utf-8', { fatal: true });

/** Builds the mapping of a site: which topic carries which channels, where in its payload. */
export function createMapping(site: Site): MessageMapping {
  const sensors = new Map<string, [Channel, Sensor][]>();
  for (const [channel, sensor] of Object.entries(site.sensors) as [Channel, Sensor][]) {
    if (sensor.topic === undefined) continue;
    const list = sensors.get(sensor.topic) ?? [];
    list.push([channel, sensor]);
    sensors.set(sensor.topic, list);
  }
  const feedback = site.link.kind === 'mqtt' ? site.link.feedback : undefined;
  const topics = new Set([...sensors.keys(), ...(feedback === undefined ? [] : [feedback.topic])]);
  return {
    topics: [...topics],
    read: (topic, payload, retained) => {
      const here = sensors.get(topic) ?? [];
      const place = feedback?.topic === topic ? feedback : undefined;
      const said = readPayload(payload, retained);
      if ('fault' in said) return { readings: [], feedback: null, faults: [`${topic}: ${said.fault}`] };
      return meaning(topic, said.document, here, place);
    },
  };
}

function readPayload(payload: Uint8Array, retained: boolean): { document: unknown } | { fault: string } {
  if (retained) return { fault: 'a retained message, whose age nobody knows' };
  if (payload.length > maximumPayloadBytes) return { fault: `longer than ${maximumPayloadBytes} bytes` };
  try {
    const text = utf8.decode(payload);
    const number = toNumber(text);
    return { document: number ?? JSON.parse(text) };
  } catch {
    return { fault: 'neither JSON nor a number' };
  }
}

function meaning(
  topic: string,
  document: unknown,
  here: readonly [Channel, Sensor][],
  place: FeedbackPlace | undefined,
): Meaning {
  const readings: [Channel, SensorValue][] = [];
  const faults: string[] = [];
  for (const [channel, sensor] of here) {
    const sent = atPointer(document, sensor.pointer ?? '');
    // A device may spread its values over several messages of one topic.
    if (sent === undefined) continue;
    const value = readSensor(sent, sensor);
    if (value !== undefined) readings.push([channel, value]);
    else faults.push(`${topic}: no usable number for ${channel}`);
  }
  const feedback =
    place === undefined
      ? null
      : readFeedback(document, place, (part) => {
          faults.push(`${topic}: no usable feedback of the ${part}`);
        });
  if (readings.length === 0 && feedback === null && faults.length === 0)
    faults.push(`${topic}: nothing that the site file looks for`);
  return { readings, feedback, faults };
}

/**
 * A pump that says true runs at full speed. A drain that says nothing, or null, cannot tell.
 *
 * @param blame - Told of each part that cannot be understood, and of a pump that is missing beside a drain.
 * @returns null without a usable word of the pump.
 */
function readFeedback(
  document: unknown,
  place: FeedbackPlace,
  blame: (part: 'pump' | 'drain') => void,
): FeedbackValue | null {
  const pump = atPointer(document, place.pumpPointer);
  const drain = place.drainPointer === undefined ? undefined : atPointer(document, place.drainPointer);
  // A device may spread its values over several messages of one topic.
  if (pump === undefined && drain === undefined) return null;
  const pumpFraction = toFraction(pump);
  const drainOpen = readDrain(drain);
  if (pumpFraction === undefined) blame('pump');
  if (drainOpen === undefined) blame('drain');
  return pumpFraction === undefined ? null : { pumpFraction, drainOpen: drainOpen ?? null };
}

/** @returns undefined when it cannot be understood. */
function readDrain(sent: unknown): boolean | null | undefined {
  if (sent === undefined || sent === null) return null;
  const fraction = toFraction(sent);
  return fraction === 0 || fraction === 1 ? fraction === 1 : undefined;
}

/** A number from 0 to 1, false and true being its ends. */
function toFraction(sent: unknown): number | undefined {
  const number = typeof sent === 'boolean' ? Number(sent) : toNumber(sent);
  return number !== undefined && number >= 0 && number <= 1 ? number : undefined;
}
