import { randomBytes } from 'node:crypto';
import mqtt from 'mqtt';
import { allSitesTopics } from '../../shared-types/messages.ts';
import type { BrokerAddress } from './broker-address.ts';

/** The monitor's line to the broker. It reconnects by itself and queues nothing. */
export interface BrokerLink {
  connected(): boolean;
  /** Sends at once or not at all; never retained. */
  publish(topic: string, text: string): void;
  close(): Promise<void>;
}

export interface BrokerLinkOptions extends BrokerAddress {
  readonly onMessage: (topic: string, payload: Uint8Array, retained: boolean) => void;
  /** Called after the line came up and after it went down. */
  readonly onChange: () => void;
  readonly onError: (thrown: unknown) => void;
}

export function openBrokerLink(options: BrokerLinkOptions): BrokerLink {
  const { onMessage, onChange, onError, ...address } = options;
  const client = mqtt.connect({
    ...address,
    clientId: `flatwater-monitor-${randomBytes(6).toString('hex')}`,
    protocolVersion: 4,
    queueQoSZero: false,
    resubscribe: false,
    reconnectPeriod: 1000,
    connectTimeout: 5000,
    keepalive: 15,
  });
  client.on('connect', () => {
    client.subscribe(Object.values(allSitesTopics), { qos: 1 }, (thrown) => {
      if (thrown !== null && client.connected) onError(thrown);
    });
    onChange();
  });
  client.on('close', onChange);
  client.on('error', onError);
  client.on('message', (topic, payload, { retain }) => onMessage(topic, payload, retain));

  return {
    connected: () => client.connected,
    publish: (topic, text) => client.publish(topic, text, { qos: 0, retain: false }),
    close: () => client.endAsync(true),
  };
}
