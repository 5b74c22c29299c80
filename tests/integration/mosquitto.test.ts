import { writeFileSync } from 'node:fs';
import { connect, connectAsync, type IClientOptions, type MqttClient } from 'mqtt';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { wallClock } from '../../controller/clock.ts';
import type { LinkReport } from '../../controller/links/link.ts';
import { openLink } from '../../controller/links/open-link.ts';
import { siteTopics } from '../../shared-types/messages.ts';
import { type BrokerUser, type MosquittoBroker, startMosquitto } from '../support/mosquitto.ts';
import { demoContent, siteOf } from '../support/sites.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { sleep, until } from '../support/wait.ts';
import { linkContract } from '../unit/links/contract.ts';
import { mqttRig } from '../unit/links/mqtt-rig.ts';

const topics = siteTopics('quillhaven-wash-house');

/** The link section of a site whose broker is this one, under the user's name. */
function linkTo(broker: MosquittoBroker, user: BrokerUser) {
  return {
    kind: 'mqtt',
    url: broker.url,
    username: broker.username(user),
    passwordFile: broker.passwordFile(user),
    outputsTopic: topics.deviceOutputs,
    feedback: { topic: topics.deviceFeedback, pumpPointer: '/pumpFraction', drainPointer: '/drainOpen' },
  };
}

linkContract('MQTT over Mosquitto', async () => {
  const broker = await startMosquitto();
  return mqttRig({
    changes: { link: linkTo(broker, 'controller') },
    deviceUrl: broker.url,
    device: { username: broker.username('device'), password: broker.password('device') },
    cut: broker.kill,
    restore: broker.restart,
    dispose: broker.stop,
  });
});

describe('Mosquitto', () => {
  let broker: MosquittoBroker;
  const clients: MqttClient[] = [];
  beforeAll(async () => {
    broker = await startMosquitto();
  });
  afterEach(async () => {
    await Promise.all(clients.splice(0).map((client) => client.endAsync(true)));
  });
  afterAll(() => broker.stop());

  interface Heard {
    readonly topic: string;
    readonly text: string;
    readonly retained: boolean;
  }
  const join = async (user: BrokerUser, options: IClientOptions = {}) => {
    const client = connect(broker.url, {
      protocolVersion: 4,
      username: broker.username(user),
      password: broker.password(user),
      reconnectPeriod: 100,
      ...options,
    });
    clients.push(client);
    // It listens before it is connected: what a lasting session held back comes with the connection.
    const heard: Heard[] = [];
    client.on('message', (topic, payload, { retain }) =>
      heard.push({ topic, text: payload.toString(), retained: retain }),
    );
    await until('the connection', () => client.connected);
    return { client, heard };
  };
  /** Resolves when whatever was sent before to this listener has arrived: brokers keep the order. */
  const settle = async (listener: { heard: Heard[]; client: MqttClient }, topic: string) => {
    const controller = await join('controller');
    await listener.client.subscribeAsync(topic);
    await controller.client.publishAsync(topic, 'mark', { qos: 1 });
    await until('the mark', () => listener.heard.some(({ text }) => text === 'mark'));
    return listener.heard.filter(({ text }) => text !== 'mark');
  };

  describe('who may do what', () => {
    const forbidden: readonly (readonly [BrokerUser, string])[] = [
      ['monitor', topics.deviceOutputs],
      ['device', topics.deviceOutputs],
      ['guest', topics.deviceOutputs],
      ['device', topics.request],
      ['guest', topics.request],
      ['guest', topics.deviceReadings],
      ['monitor', topics.deviceReadings],
      ['monitor', topics.snapshot],
      ['device', topics.status],
    ];
    it.each(forbidden)('%s writing %s has no effect', async (user, topic) => {
      const controller = await join('controller');
      await controller.client.subscribeAsync([topics.deviceOutputs, topics.request, topics.deviceReadings]);
      const guest = await join('guest');
      await guest.client.subscribeAsync('flatwater/#');
      const intruder = await join(user);
      await intruder.client.publishAsync(topic, 'forbidden', { qos: 1 });
      expect(await settle(guest, topics.answer)).toEqual([]);
      expect(controller.heard.filter(({ text }) => text === 'forbidden')).toEqual([]);
    });

    const allowed: readonly (readonly [BrokerUser, string, BrokerUser])[] = [
      ['controller', topics.deviceOutputs, 'device'],
      ['device', topics.deviceReadings, 'controller'],
      ['device', topics.deviceFeedback, 'controller'],
      ['monitor', topics.request, 'controller'],
      ['controller', topics.snapshot, 'monitor'],
      ['controller', topics.answer, 'guest'],
    ];
    it.each(allowed)('%s writing %s is heard by %s', async (from, topic, to) => {
      const listener = await join(to);
      await listener.client.subscribeAsync(topic);
      const speaker = await join(from);
      await speaker.client.publishAsync(topic, 'allowed', { qos: 1 });
      await until('the message', () => listener.heard.some(({ text }) => text === 'allowed'));
    });

    it('a stranger is not let in', async () => {
      const stranger = connectAsync(broker.url, { protocolVersion: 4, reconnectPeriod: 0 }, false);
      await expect(stranger).rejects.toThrow(/not authorized/i);
    });
  });

  describe('the link', () => {
    it('keeps trying with a wrong password, and reads the password file again', async () => {
      const folder = temporaryFolder('password');
      const passwordFile = folder.file('password');
      writeFileSync(passwordFile, 'wrong\n');
      const reports: LinkReport[] = [];
      const site = siteOf(demoContent({ link: { ...linkTo(broker, 'controller'), passwordFile } }));
      const link = await openLink({ site, clock: wallClock, report: (report) => reports.push(report) });
      await link.open();
      expect(link.health().connected).toBe(false);
      expect(reports.map(({ text }) => text).join()).toMatch(/not reached.*not authorized/i);
      writeFileSync(passwordFile, `${broker.password('controller')}\n`);
      await until('the connection with the right password', () => link.health().connected);
      expect(reports.map(({ kind }) => kind)).toEqual(['link-lost', 'link-back']);
      await link.close();
      folder.remove();
    });

    it('says in words that its password file cannot be read, and goes on', async () => {
      const reports: LinkReport[] = [];
      const passwordFile = broker.passwordFile('nobody' as BrokerUser);
      const site = siteOf(demoContent({ link: { ...linkTo(broker, 'controller'), passwordFile } }));
      const link = await openLink({ site, clock: wallClock, report: (report) => reports.push(report) });
      await link.open();
      expect(reports[0]).toMatchObject({
        kind: 'link-lost',
        text: expect.stringContaining('password file cannot be read: ENOENT'),
      });
      expect(link.health().connected).toBe(false);
      await link.close();
    });

    it('refuses retained readings, whose age nobody knows, and takes live ones', async () => {
      const device = await join('device');
      await device.client.publishAsync(topics.deviceReadings, '{"values":{"panOutletC":95}}', {
        qos: 1,
        retain: true,
      });
      const reports: LinkReport[] = [];
      const site = siteOf(demoContent({ link: linkTo(broker, 'controller') }));
      const link = await openLink({ site, clock: wallClock, report: (report) => reports.push(report) });
      await link.open();
      await until('the refusal', () => link.health().ignored === 1);
      expect(link.readings()).toEqual({});
      expect(reports[0]?.text).toContain('retained');
      await device.client.publishAsync(topics.deviceReadings, '{"values":{"panOutletC":35}}', { qos: 1 });
      await until('the live reading', () => link.readings().panOutletC?.value === 35);
      await device.client.publishAsync(topics.deviceReadings, '', { qos: 1, retain: true });
      await link.close();
    });
  });

  // What brokers do with commands that are kept or queued, and why outputs are neither. MQTT 3.1.1
  // [MQTT-3.3.1-8], [MQTT-3.3.1-9] for the retain flag; the rest is how the parts at hand behave.
  describe('hazards of late commands', () => {
    const outputs = topics.deviceOutputs;
    const clearRetained = async () => {
      const controller = await join('controller');
      await controller.client.publishAsync(outputs, '', { qos: 1, retain: true });
    };

    it('a retained command reaches a live listener without its flag, so the flag alone proves nothing', async () => {
      const device = await join('device');
      await device.client.subscribeAsync(outputs);
      const controller = await join('controller');
      await controller.client.publishAsync(outputs, 'late', { qos: 1, retain: true });
      await until('the command', () => device.heard.length > 0);
      expect(device.heard).toEqual([{ topic: outputs, text: 'late', retained: false }]);
      await clearRetained();
    });

    it('the same command comes again, flagged, to whoever subscribes later', async () => {
      const controller = await join('controller');
      await controller.client.publishAsync(outputs, 'late', { qos: 1, retain: true });
      const device = await join('device');
      await device.client.subscribeAsync(outputs);
      await until('the command', () => device.heard.length > 0);
      expect(device.heard).toEqual([{ topic: outputs, text: 'late', retained: true }]);
      await clearRetained();
    });

    it('a queued command fires on reconnect, as the client library would have it by default', async () => {
      const device = await join('device');
      await device.client.subscribeAsync(outputs);
      const controller = await join('controller', { queueQoSZero: true });
      controller.client.stream.destroy();
      await until('the loss', () => !controller.client.connected);
      controller.client.publish(outputs, 'late');
      await until('the late command', () => device.heard.length > 0);
    });

    it('without that queue it fails at once and nothing is sent', async () => {
      const device = await join('device');
      await device.client.subscribeAsync(outputs);
      const controller = await join('controller', { queueQoSZero: false });
      controller.client.stream.destroy();
      await until('the loss', () => !controller.client.connected);
      await expect(controller.client.publishAsync(outputs, 'late')).rejects.toThrow(/no connection/i);
      await until('the return', () => controller.client.connected);
      expect(await settle(device, outputs)).toEqual([]);
    });

    it('a lasting session gets what was acknowledged while it was away, without a flag', async () => {
      const lasting = { clean: false, clientId: 'lasting-device' };
      const before = await join('device', lasting);
      await before.client.subscribeAsync(outputs, { qos: 1 });
      await before.client.endAsync();
      const controller = await join('controller');
      await controller.client.publishAsync(outputs, 'late', { qos: 1 });
      const after = await join('device', lasting);
      await until('the late command', () => after.heard.length > 0);
      expect(after.heard).toEqual([{ topic: outputs, text: 'late', retained: false }]);
    });

    it('what the link sends is not kept for such a session', async () => {
      const lasting = { clean: false, clientId: 'another-lasting-device' };
      const before = await join('device', lasting);
      await before.client.subscribeAsync(outputs, { qos: 1 });
      await before.client.endAsync();
      const link = await openLink({
        site: siteOf(demoContent({ link: linkTo(broker, 'controller') })),
        clock: wallClock,
        report: () => undefined,
      });
      await link.open();
      link.apply({
        schema: 1,
        sequence: 1,
        pumpFraction: 1,
        drainOpen: false,
        drainPumpOn: false,
        exchangerPumpOn: false,
        expiresInMs: 60_000,
      });
      await link.close();
      const after = await join('device', lasting);
      await sleep(300);
      expect(after.heard).toEqual([]);
      const late = await join('device');
      await late.client.subscribeAsync(outputs);
      await sleep(300);
      expect(late.heard).toEqual([]);
    });
  });
});
