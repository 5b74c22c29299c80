import mqtt, { type IPublishPacket, type MqttClient } from 'mqtt';
import type { z } from 'zod';
import {
  messageSchemaVersion,
  outputMessageSchema,
  type StatusMessage,
  siteTopics,
} from '../../shared-types/messages.ts';
import type { Site } from '../../shared-types/site.ts';
import { faultMessageSchema } from './fault-message.ts';
import { checkWish, misfitOf } from './fault-text.ts';
import { feedbackMessages, readingMessages, type Sent } from './messages.ts';
import type { DevicePort, PortEvents } from './port.ts';

export interface MqttPortOptions {
  readonly site: Site;
  readonly url: string;
  readonly username?: string;
  readonly password?: string;
}

const longestPayload = 4096;

/** The device on a broker. Retained and malformed messages are refused and counted. */
export function createMqttPort(options: MqttPortOptions, events: PortEvents): DevicePort {
  const { site } = options;
  const topics = siteTopics(site.name);
  const outputsTopic = site.link.kind === 'mqtt' ? site.link.outputsTopic : topics.deviceOutputs;
  const said = new Set<string>();
  let client: MqttClient | undefined;
  let sequence = 0;
  let ignored = 0;

  const sayOnce = (text: string) => {
    if (said.has(text)) return;
    said.add(text);
    events.say(text);
  };
  const refuse = (why: string) => {
    ignored++;
    sayOnce(`ignored: ${why}`);
  };
  const send = ({ topic, payload }: Sent) => {
    if (client?.connected === true && events.powered()) client.publish(topic, payload, { qos: 0 });
  };
  const hear = (topic: string, payload: Uint8Array, packet: IPublishPacket) => {
    if (packet.retain) return refuse(`a retained message on ${topic}`);
    if (topic === outputsTopic) return hearOutputs(payload);
    return hearFault(payload);
  };
  const hearOutputs = (payload: Uint8Array) => {
    const message = readMessage(payload, outputMessageSchema);
    if (message === undefined) return refuse('outputs that are not a message of this version');
    events.outputs(message);
  };
  const hearFault = (payload: Uint8Array) => {
    const message = readMessage(payload, faultMessageSchema);
    if (message === undefined) return refuse('a fault that is not a message of this version');
    const wish = checkWish(message);
    if (!wish.ok) return refuse(wish.why);
    const misfit = misfitOf(wish.value.fault, site, false);
    if (misfit !== undefined) return refuse(misfit);
    events.fault(wish.value, message.active);
  };

  return {
    open: async () => {
      client = connect(options, topics.deviceStatus);
      client.on('connect', () => {
        client?.subscribe([outputsTopic, topics.deviceFault], { qos: 1 });
        client?.publish(topics.deviceStatus, status('online'), kept);
      });
      client.on('message', hear);
      client.on('error', (error) => {
        if (!isHangUp(error)) sayOnce(`broker: ${error.message || error.name}`);
      });
    },
    sendReadings: (values, atMs) =>
      readingMessages(values, site, { sequence: sequence++, atMs }).forEach(send),
    sendFeedback: (feedback) => feedbackMessages(feedback, ignored, site, sequence++).forEach(send),
    close: async () => {
      if (client === undefined) return;
      if (client.connected)
        await within(closingMs, client.publishAsync(topics.deviceStatus, status('stopped'), kept));
      // Without a proper goodbye the broker would send the last will over the farewell.
      await within(closingMs, client.endAsync(!client.connected));
    },
  };
}

/** A broker that hung up is tried again at once, and one that is really gone makes an error of its own then. */
const isHangUp = (error: Error): boolean =>
  'code' in error && (error.code === 'EPIPE' || error.code === 'ECONNRESET');

const closingMs = 500;
const kept = { qos: 1, retain: true } as const;

/** Waits for a farewell that a dead broker may never answer. */
async function within(limitMs: number, work: Promise<unknown>): Promise<void> {
  const ignoring = work.catch(() => undefined);
  await Promise.race([ignoring, new Promise((resolve) => setTimeout(resolve, limitMs).unref())]);
}

function status(state: StatusMessage['state']): string {
  return JSON.stringify({ schema: messageSchemaVersion, state } satisfies StatusMessage);
}

function connect(options: MqttPortOptions, statusTopic: string): MqttClient {
  const { url, username, password } = options;
  return mqtt.connect(url, {
    protocolVersion: 4,
    clean: true,
    reconnectPeriod: 1000,
    connectTimeout: 5000,
    // What was measured while the broker was away is old news.
    queueQoSZero: false,
    will: { topic: statusTopic, payload: Buffer.from(status('lost')), ...kept },
    ...(username === undefined ? {} : { username }),
    ...(password === undefined ? {} : { password }),
  });
}

function readMessage<T>(payload: Uint8Array, schema: z.ZodType<T>): T | undefined {
  if (payload.length > longestPayload) return undefined;
  try {
    return schema.safeParse(JSON.parse(new TextDecoder().decode(payload))).data;
  } catch {
    return undefined;
  }
}
