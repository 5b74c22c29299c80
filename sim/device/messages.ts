import type { Channel } from '../../shared-types/channels.ts';
import { messageSchemaVersion, siteTopics } from '../../shared-types/messages.ts';
import type { Sensor, Site } from '../../shared-types/site.ts';
import type { SensorValues } from '../plant/sensors.ts';
import type { DeviceFeedback } from './device.ts';
import { type SentValue, sentReadings } from './sent-values.ts';

export interface Sent {
  readonly topic: string;
  readonly payload: string;
}

export interface Stamp {
  readonly sequence: number;
  readonly atMs: number;
}

/**
 * Messages that carry the readings, one a topic, each value where the site file looks for it. So the
 * device stands in for whatever a site file describes. On its own topic they are numbered and dated.
 * A topic is silent while none of the values is there that it carries.
 */
export function readingMessages(values: SensorValues, site: Site, stamp: Stamp): Sent[] {
  const ownTopic = siteTopics(site.name).deviceReadings;
  const documents = new Map<string, unknown>();
  if (speaks(ownTopic, values, site))
    documents.set(ownTopic, { schema: messageSchemaVersion, ...stamp, values: {} });
  for (const [, sensor, value] of sentReadings(values, site)) {
    if (sensor.topic === undefined) continue;
    const before = documents.get(sensor.topic);
    documents.set(sensor.topic, withValueAt(before, sensor.pointer ?? '', codeOf(value, sensor)));
  }
  return [...documents].map(([topic, document]) => ({ topic, payload: JSON.stringify(document) }));
}

/** True for a topic that carries a value now, or that the site file looks for nothing on. */
function speaks(topic: string, values: SensorValues, { sensors }: Site): boolean {
  const carried = (Object.keys(sensors) as Channel[]).filter((channel) => sensors[channel]?.topic === topic);
  return carried.length === 0 || carried.some((channel) => values[channel] !== undefined);
}

/** A number, the code of what failed, or null when the site names no code for it. */
function codeOf(value: SentValue, sensor: Sensor): number | null {
  if (value === 'open-circuit') return sensor.openCode ?? null;
  if (value === 'short-circuit') return sensor.shortCode ?? null;
  return value;
}

/** The document with a value at a JSON pointer (RFC 6901); what stands in the way becomes an object. */
function withValueAt(document: unknown, pointer: string, value: unknown): unknown {
  if (pointer === '') return value;
  const [, ...steps] = pointer.split('/').map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'));
  const last = steps.pop();
  const root = asObject(document);
  let place = root;
  for (const step of steps) {
    place[step] = asObject(place[step]);
    place = place[step] as Record<string, unknown>;
  }
  if (last !== undefined) place[last] = value;
  return root;
}

function asObject(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

/** Messages that say what the outputs do: on the device's own topic, and where the site file looks. */
export function feedbackMessages(
  feedback: DeviceFeedback,
  ignored: number,
  site: Site,
  sequence: number,
): Sent[] {
  const ownTopic = siteTopics(site.name).deviceFeedback;
  const own = { schema: messageSchemaVersion, sequence, ...feedback, ignored };
  const documents = new Map<string, unknown>([[ownTopic, own]]);
  const place = site.link.kind === 'mqtt' ? site.link.feedback : undefined;
  if (place !== undefined) {
    const withPump = withValueAt(documents.get(place.topic), place.pumpPointer, feedback.pumpFraction);
    const whole =
      place.drainPointer === undefined
        ? withPump
        : withValueAt(withPump, place.drainPointer, feedback.drainOpen);
    documents.set(place.topic, whole);
  }
  return [...documents].map(([topic, document]) => ({ topic, payload: JSON.stringify(document) }));
}
