import mqtt, { type MqttClient } from 'mqtt';
import { siteTopics } from '../../shared-types/messages.ts';

/** Values of a loop at rest on a fair day. */
const restingValues = {
  panOutletC: 24,
  panSheetC: 26,
  panInletC: 23,
  storeBottomC: 30,
  storeMiddleC: 32,
  storeTopC: 35,
  ambientC: 18,
  irradianceWM2: 300,
  windMs: 2,
  humidityFraction: 0.6,
  flowLMin: 0,
  panLevelMm: 0,
};

/** A device that says exactly what it is told, on the demo site's topics. */
export interface SteadyDevice {
  readonly client: MqttClient;
  /** Publishes all values, some of them changed. */
  say(changes?: Partial<typeof restingValues>): void;
  close(): Promise<void>;
}

export async function connectSteadyDevice(brokerUrl: string, site: string): Promise<SteadyDevice> {
  const topics = siteTopics(site);
  const client = await mqtt.connectAsync(brokerUrl, { queueQoSZero: false });
  let sequence = 0;
  return {
    client,
    say(changes = {}) {
      const values = { ...restingValues, ...changes };
      const message = { schema: 1, sequence: sequence++, atMs: Date.now(), values };
      client.publish(topics.deviceReadings, JSON.stringify(message));
    },
    close: () => client.endAsync(),
  };
}
