import { connectAsync, type IClientOptions, type MqttClient } from 'mqtt';
import type { LinkReport, LoopLink } from '../../../controller/links/link.ts';
import { openLink } from '../../../controller/links/open-link.ts';
import { outputMessageSchema, siteTopics } from '../../../shared-types/messages.ts';
import { manualClock } from '../../support/manual-clock.ts';
import { demoContent, type SiteContent, siteOf } from '../../support/sites.ts';
import { until } from '../../support/wait.ts';
import type { HeardOutputs, LinkRig } from './contract.ts';

const topics = siteTopics('quillhaven-wash-house');

export interface MqttRigParts {
  /** Site file sections that lead the link to its broker. */
  readonly changes: SiteContent;
  readonly brokerUrl?: string;
  readonly brokerCredentials?: { readonly username: string; readonly password: string };
  /** How the far end reaches the broker. */
  readonly deviceUrl: string;
  readonly device?: IClientOptions;
  cut(): Promise<void>;
  restore(): Promise<void>;
  dispose(): Promise<void>;
}

/** A link over a broker with a device's client on the far end. */
export async function mqttRig(parts: MqttRigParts): Promise<LinkRig> {
  const clock = manualClock();
  const reports: LinkReport[] = [];
  const heard: HeardOutputs[] = [];
  const link: LoopLink = await openLink({
    site: siteOf(demoContent(parts.changes)),
    clock,
    report: (report) => reports.push(report),
    ...(parts.brokerUrl === undefined ? {} : { brokerUrl: parts.brokerUrl }),
    ...(parts.brokerCredentials === undefined ? {} : { brokerCredentials: parts.brokerCredentials }),
  });
  const device = await connectDevice(parts, heard);
  const say = async (topic: string, payload: string) => {
    await until('the device to be connected', () => device.connected);
    await device.publishAsync(topic, payload);
  };
  return {
    link,
    clock,
    reports,
    heard: () => heard,
    sendReadings: (values) =>
      say(topics.deviceReadings, JSON.stringify({ schema: 1, sequence: 1, atMs: 0, values })),
    sendFeedback: (pumpFraction, drainOpen) =>
      say(topics.deviceFeedback, JSON.stringify({ schema: 1, sequence: 1, pumpFraction, drainOpen })),
    sendRubbish: () => say(topics.deviceReadings, '{"values": {'),
    cut: parts.cut,
    restore: async () => {
      await parts.restore();
      await until('the device to be back', () => device.connected);
    },
    dispose: async () => {
      await device.endAsync(true);
      await parts.dispose();
    },
  };
}

/** A client that subscribes before it counts as connected, again after each loss. */
async function connectDevice(parts: MqttRigParts, heard: HeardOutputs[]): Promise<MqttClient> {
  const device = await connectAsync(parts.deviceUrl, {
    protocolVersion: 4,
    reconnectPeriod: 100,
    queueQoSZero: false,
    ...parts.device,
  });
  // While the broker is away, every attempt ends in an error; that is the point of the exercise.
  device.on('error', () => undefined);
  device.on('message', (_topic, payload) => {
    const { schema, sequence, ...outputs } = outputMessageSchema.parse(JSON.parse(payload.toString()));
    heard.push(outputs);
  });
  await device.subscribeAsync(topics.deviceOutputs);
  return device;
}
