import { randomBytes } from 'node:crypto';
import { connect, type MqttClient } from 'mqtt';
import type { Answer } from '../../shared-types/engine.ts';
import {
  messageSchemaVersion,
  type SiteMessage,
  type SnapshotMessage,
  type StatusMessage,
  siteTopics,
} from '../../shared-types/messages.ts';
import type { Site } from '../../shared-types/site.ts';
import { boundedWait } from '../links/bounded-wait.ts';
import type { BrokerCredentials } from '../links/open-link.ts';

/** What monitors see of this controller, and where they ask. */
export interface Publisher {
  snapshot(message: SnapshotMessage): void;
  /** Site and settings in force; without the names of users and of password files. */
  site(message: SiteMessage): void;
  answer(answer: Answer): void;
  /** Says goodbye, so that monitors see `stopped` and not `lost`. */
  close(): Promise<void>;
}

export interface PublisherOptions {
  readonly url: string;
  readonly credentials?: BrokerCredentials;
  readonly siteName: string;
  readonly onRequest: (payload: Uint8Array, retained: boolean) => void;
  readonly onLost: (text: string) => void;
  readonly onBack: () => void;
}

/** A snapshot stands at the broker this long after it stopped mattering anyway. */
const keepaliveS = 15;
const retryMs = 1000;
const connectTimeoutMs = 5000;
const goodbyeMs = 800;

const statusText = (state: StatusMessage['state']) =>
  JSON.stringify({ schema: messageSchemaVersion, state } satisfies StatusMessage);

/**
 * Connects to the broker of the monitors and keeps coming back to it. Never throws.
 *
 * While there is no connection nothing is queued: on return the newest site and snapshot are sent.
 */
export function openPublisher(options: PublisherOptions): Publisher {
  const topics = siteTopics(options.siteName);
  const client = connectTo(options, topics.status);
  let newestSite: string | undefined;
  let newestSnapshot: string | undefined;

  const send = (topic: string, payload: string | undefined, retain: boolean, qos: 0 | 1) => {
    if (payload !== undefined && client.connected) client.publish(topic, payload, { qos, retain });
  };
  const sendSite = () => send(topics.site, newestSite, true, 1);
  const sendSnapshot = () => send(topics.snapshot, newestSnapshot, true, 0);

  watchConnection(client, options, () => {
    client.subscribe(topics.request, { qos: 1 });
    sendSite();
    sendSnapshot();
    send(topics.status, statusText('online'), true, 1);
  });
  client.on('message', (_topic, payload, packet) => options.onRequest(payload, packet.retain));

  return {
    snapshot(message) {
      newestSnapshot = JSON.stringify(message);
      sendSnapshot();
    },
    site(message) {
      newestSite = JSON.stringify({ ...message, site: withoutAccess(message.site) });
      sendSite();
    },
    answer: (answer) =>
      send(topics.answer, JSON.stringify({ schema: messageSchemaVersion, answer }), false, 1),
    async close() {
      if (client.connected)
        await boundedWait(
          client.publishAsync(topics.status, statusText('stopped'), { qos: 1, retain: true }),
          goodbyeMs / 2,
        );
      await boundedWait(client.endAsync(!client.connected), goodbyeMs / 2);
      client.end(true);
    },
  };
}

function connectTo({ url, credentials, siteName }: PublisherOptions, statusTopic: string): MqttClient {
  return connect(url, {
    protocolVersion: 4,
    clientId: `flatwater-${siteName}-${randomBytes(4).toString('hex')}`,
    clean: true,
    keepalive: keepaliveS,
    connectTimeout: connectTimeoutMs,
    reconnectPeriod: retryMs,
    reconnectOnConnackError: true,
    queueQoSZero: false,
    resubscribe: false,
    will: { topic: statusTopic, payload: Buffer.from(statusText('lost')), qos: 1, retain: true },
    ...credentials,
  });
}

/** Tells losses and returns once each; a first connection is no return. */
function watchConnection(client: MqttClient, options: PublisherOptions, onConnect: () => void): void {
  let lost = false;
  let cause = 'the connection closed';
  client.on('connect', () => {
    onConnect();
    if (lost) options.onBack();
    lost = false;
  });
  client.on('error', (error) => {
    cause = error.message === '' ? error.name : error.message;
  });
  client.on('close', () => {
    if (client.disconnecting || lost) return;
    lost = true;
    options.onLost(cause);
  });
}

function withoutAccess(site: Site): Site {
  const { publish, link, broker, ...rest } = site;
  return {
    ...rest,
    ...(broker === undefined ? {} : { broker: openPart(broker) }),
    link: link.kind === 'mqtt' ? openPart(link) : link,
    ...(publish === undefined ? {} : { publish: openPart(publish) }),
  };
}

function openPart<Part extends { username?: string | undefined; passwordFile?: string | undefined }>(
  part: Part,
): Omit<Part, 'username' | 'passwordFile'> {
  const { username: _username, passwordFile: _passwordFile, ...open } = part;
  return open;
}
