import { randomBytes } from 'node:crypto';
import { connect, type MqttClient } from 'mqtt';
import type { Site } from '../../shared-types/site.ts';
import type { Clock } from '../clock.ts';
import { boundedWait } from './bounded-wait.ts';
import type { LinkReport, LoopLink } from './link.ts';
import { createLinkLedger, type LinkLedger } from './link-ledger.ts';
import { createMapping, type MessageMapping } from './mapping.ts';
import { createReadingShelf, type ReadingShelf } from './reading-shelf.ts';

const firstRetryMs = 1000;
const longestRetryMs = 5000;
const retryGrowth = 1.5;
/** Time for a goodbye, last outputs included; after it the connection is cut. */
const goodbyeMs = 1000;

export interface MqttLinkOptions {
  readonly site: Site;
  readonly outputsTopic: string;
  readonly clock: Clock;
  readonly url: string;
  readonly username?: string;
  /** Asked before every attempt to connect, so that a changed password file is heeded. */
  readonly password?: () => Promise<string | undefined>;
  readonly report: (report: LinkReport) => void;
}

/**
 * The loop behind an MQTT 3.1.1 broker.
 *
 * Clean session, outputs with QoS 0, never retained, dropped while there is no connection: nothing is
 * ever queued that could move a pump later.
 */
export function mqttLink(options: MqttLinkOptions): LoopLink {
  const ledger = createLinkLedger('mqtt', `broker ${hostOf(options.url)}`, options.report);
  const shelf = createReadingShelf(options.clock);
  const mapping = createMapping(options.site);
  let client: MqttClient | undefined;
  let closed = false;
  return {
    open: async () => {
      const password = await options.password?.();
      const opened = closed ? undefined : connectTo(options, password, ledger);
      if (opened === undefined) return;
      client = opened;
      keepTrying(opened, options);
      opened.on('message', (topic, payload, packet) =>
        takeMessage(mapping, shelf, ledger, topic, payload, packet.retain),
      );
      await new Promise<void>((decided) => watch(opened, ledger, mapping.topics, decided));
    },
    readings: shelf.readings,
    feedback: shelf.feedback,
    apply: (message) => {
      if (!client?.connected) return false;
      client.publish(options.outputsTopic, JSON.stringify(message), { qos: 0 });
      return true;
    },
    health: ledger.health,
    close: async () => {
      const closing = client;
      closed = true;
      client = undefined;
      if (closing === undefined) return;
      await boundedWait(closing.endAsync(!closing.connected), goodbyeMs);
      closing.end(true);
    },
  };
}

/** The host alone: an address may carry a name and a password. */
function hostOf(url: string): string {
  return URL.canParse(url) ? new URL(url).host : 'of the site file';
}

/** @returns undefined when the address is none, which the ledger is told. */
function connectTo(
  { url, username }: MqttLinkOptions,
  password: string | undefined,
  ledger: LinkLedger,
): MqttClient | undefined {
  if (!URL.canParse(url)) {
    ledger.disconnected('its address cannot be understood');
    return undefined;
  }
  return connect(url, {
    protocolVersion: 4,
    clientId: `flatwater-link-${randomBytes(4).toString('hex')}`,
    clean: true,
    keepalive: 15,
    connectTimeout: 5000,
    reconnectPeriod: firstRetryMs,
    reconnectOnConnackError: true,
    queueQoSZero: false,
    resubscribe: false,
    ...(username === undefined ? {} : { username }),
    ...(password === undefined ? {} : { password }),
  });
}

/** Longer waits between attempts up to a bound, the short one again after a success. */
function keepTrying(client: MqttClient, options: MqttLinkOptions): void {
  client.on('connect', () => {
    client.options.reconnectPeriod = firstRetryMs;
  });
  client.on('close', () => {
    void options.password?.().then((password) => {
      if (password !== undefined) client.options.password = password;
    });
  });
  client.on('reconnect', () => {
    const waitedMs = client.options.reconnectPeriod ?? firstRetryMs;
    client.options.reconnectPeriod = Math.min(longestRetryMs, waitedMs * retryGrowth);
  });
}

/**
 * Subscribes after every connect and keeps the books of the connection.
 *
 * @param decided - Called whenever an attempt has ended, well or badly.
 */
function watch(client: MqttClient, ledger: LinkLedger, topics: readonly string[], decided: () => void): void {
  let cause = 'the connection closed';
  client.on('connect', () => {
    client.subscribe([...topics], { qos: 0 }, (error, granted) => {
      if (!client.connected) return;
      const refused = granted?.filter(({ qos }) => qos === 128).map(({ topic }) => topic) ?? [];
      if (error !== null && refused.length === 0) ledger.ignored(`subscriptions refused: ${error.message}`);
      for (const topic of refused) ledger.ignored(`the broker refuses the subscription to ${topic}`);
      ledger.connected();
      decided();
    });
  });
  client.on('error', (error) => {
    cause = causeOf(error);
  });
  client.on('close', () => {
    if (!client.disconnecting) ledger.disconnected(cause);
    cause = 'the connection closed';
    decided();
  });
}

/** Errors of a host with several addresses carry their words in the code alone. */
function causeOf(error: Error): string {
  if (error.message !== '') return error.message;
  return 'code' in error && typeof error.code === 'string' ? error.code : error.name;
}

function takeMessage(
  mapping: MessageMapping,
  shelf: ReadingShelf,
  ledger: LinkLedger,
  topic: string,
  payload: Uint8Array,
  retained: boolean,
): void {
  const { readings, feedback, faults } = mapping.read(topic, payload, retained);
  for (const [channel, value] of readings) shelf.put(channel, value);
  if (feedback !== null) shelf.putFeedback(feedback);
  if (faults.length > 0) ledger.ignored(...faults);
  if (readings.length > 0 || feedback !== null) ledger.taken();
}
