import { connect as connectSocket } from 'node:net';
import { connect, type IClientOptions, type MqttClient } from 'mqtt';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type RunningBroker, startBroker } from '../../../controller/links/broker.ts';
import { BrokerStartError } from '../../../controller/links/broker-start-error.ts';
import type { LinkReport } from '../../../controller/links/link.ts';
import { siteTopics } from '../../../shared-types/messages.ts';
import { demoContent, siteOf } from '../../support/sites.ts';
import { until } from '../../support/wait.ts';

const site = siteOf(demoContent());
const topics = siteTopics(site.name);

interface Joined {
  readonly client: MqttClient;
  readonly heard: { topic: string; text: string; retained: boolean }[];
}

describe('embedded broker', () => {
  let broker: RunningBroker;
  let reports: LinkReport[];
  let clients: MqttClient[];
  beforeEach(async () => {
    reports = [];
    clients = [];
    broker = await startBroker({
      host: '127.0.0.1',
      port: 0,
      site,
      report: (report) => reports.push(report),
    });
  });
  afterEach(async () => {
    await Promise.all(clients.map((client) => client.endAsync(true)));
    await broker.close();
  });

  const start = (options: IClientOptions = {}): Joined => {
    const client = connect(broker.url, { protocolVersion: 4, reconnectPeriod: 0, ...options });
    clients.push(client);
    const heard: Joined['heard'] = [];
    client.on('error', () => undefined);
    client.on('message', (topic, payload, { retain }) =>
      heard.push({ topic, text: payload.toString(), retained: retain }),
    );
    return { client, heard };
  };
  const join = async (options: IClientOptions = {}): Promise<Joined> => {
    const joined = start(options);
    await until('the connection', () => joined.client.connected);
    return joined;
  };
  const isRefused = async ({ client }: Joined) => {
    let said: string | undefined;
    client.on('error', (error) => {
      said = error.message;
    });
    return until('the refusal', () => said);
  };
  const asController = () => join(broker.controllerCredentials);
  /** Resolves when all that was sent before has been passed on. */
  const settle = async (listener: Joined, ...senders: Joined[]) => {
    for (const { client } of senders) {
      await client.publishAsync('test/mark', 'mark', { qos: 1 });
      await until('the mark', () => listener.heard.some(({ topic }) => topic === 'test/mark'));
    }
    return listener.heard.filter(({ topic }) => topic !== 'test/mark');
  };

  it('gives every start credentials of its own', async () => {
    const other = await startBroker({ host: '127.0.0.1', port: 0, site });
    expect(other.controllerCredentials.password).not.toBe(broker.controllerCredentials.password);
    await other.close();
  });

  it('brings outputs of the controller to a device', async () => {
    const device = await join();
    await device.client.subscribeAsync(topics.deviceOutputs);
    const controller = await asController();
    await controller.client.publishAsync(topics.deviceOutputs, 'outputs', { qos: 1 });
    await until('the outputs', () => device.heard.length === 1);
  });

  it('sends a forbidden publication nowhere, and keeps the mistaken client, whose readings go on', async () => {
    const all = await join();
    await all.client.subscribeAsync(['#', '$SYS/#']);
    const device = await join();
    for (const topic of [topics.deviceOutputs, topics.snapshot, topics.status, topics.site, topics.answer])
      for (const qos of [0, 1, 2] as const) await device.client.publishAsync(topic, 'forbidden', { qos });
    await device.client.publishAsync(topics.deviceReadings, 'readings', { qos: 1 });
    const heard = await settle(all, device);
    expect(heard.filter(({ text }) => text === 'forbidden')).toEqual([]);
    expect(heard.map(({ text }) => text)).toContain('readings');
    expect(device.client.connected).toBe(true);
    expect(reports).toHaveLength(5);
  });

  it('retains no output and no request, whoever asks for it', async () => {
    const controller = await asController();
    const monitor = await join();
    await controller.client.publishAsync(topics.deviceOutputs, 'kept', { qos: 1, retain: true });
    await monitor.client.publishAsync(topics.request, 'kept', { qos: 1, retain: true });
    const later = await join();
    await later.client.subscribeAsync('#');
    expect(await settle(later, controller, monitor)).toEqual([]);
  });

  it('a will on a topic of the controller goes nowhere', async () => {
    const all = await join();
    await all.client.subscribeAsync('#');
    const intruder = await join({
      will: { topic: topics.status, payload: Buffer.from('forbidden'), qos: 1, retain: true },
    });
    intruder.client.stream.destroy();
    await until('the refusal', () => reports.length === 1);
    const controller = await asController();
    expect(await settle(all, controller)).toEqual([]);
  });

  it('the will of the controller is heard', async () => {
    const monitor = await join();
    await monitor.client.subscribeAsync(topics.status);
    const controller = await join({
      ...broker.controllerCredentials,
      will: { topic: topics.status, payload: Buffer.from('lost'), qos: 1, retain: true },
    });
    controller.client.stream.destroy();
    await until('the will', () => monitor.heard.some(({ text }) => text === 'lost'));
  });

  it("refuses the controller's name with another password", async () => {
    const { username } = broker.controllerCredentials;
    expect(await isRefused(start({ username, password: 'guess' }))).toMatch(/not authorized/i);
    expect(await isRefused(start({ username }))).toMatch(/not authorized/i);
  });

  it("nobody takes the controller's place by its client id", async () => {
    const controller = await join({ ...broker.controllerCredentials, clientId: 'the-controller' });
    expect(await isRefused(start({ clientId: 'the-controller' }))).toMatch(/not authorized/i);
    const { username } = broker.controllerCredentials;
    const guesser = start({ clientId: 'the-controller', username, password: 'guess' });
    expect(await isRefused(guesser)).toMatch(/not authorized/i);
    expect(controller.client.connected).toBe(true);
    await controller.client.publishAsync(topics.deviceOutputs, 'outputs', { qos: 1 });
    expect(reports).toEqual([]);
    await controller.client.endAsync();
    const other = await join({ clientId: 'the-controller' });
    const all = await join();
    await all.client.subscribeAsync('#');
    await other.client.publishAsync(topics.deviceOutputs, 'forbidden', { qos: 1 });
    expect(await settle(all, other)).toEqual([]);
  });

  it('the controller may come back under its client id while the old connection hangs', async () => {
    const identity = { ...broker.controllerCredentials, clientId: 'the-controller' };
    const old = await join(identity);
    const fresh = await join(identity);
    await until('the old connection to end', () => !old.client.connected);
    const device = await join();
    await device.client.subscribeAsync(topics.deviceOutputs);
    await fresh.client.publishAsync(topics.deviceOutputs, 'outputs', { qos: 1 });
    await until('the outputs', () => device.heard.length === 1);
  });

  describe('with credentials for its clients', () => {
    const clientCredentials = { username: 'roof', password: 'sun on the sheet' };
    beforeEach(async () => {
      await broker.close();
      broker = await startBroker({ host: '127.0.0.1', port: 0, site, clientCredentials });
    });

    it.each([
      ['no name', {}],
      ['another name', { username: 'cellar', password: 'sun on the sheet' }],
      ['another password', { username: 'roof', password: 'sun on the sheet.' }],
      ['no password', { username: 'roof' }],
      ["the controller's name", { username: 'flatwater-controller', password: 'sun on the sheet' }],
    ])('refuses who gives %s, so that no request or reading comes from there', async (_what, given) => {
      expect(await isRefused(start(given))).toMatch(/not authorized/i);
    });

    it('lets in who gives them, and the controller, but nobody else in its place', async () => {
      const controller = await join({ ...broker.controllerCredentials, clientId: 'the-controller' });
      await controller.client.subscribeAsync([topics.request, topics.deviceReadings, topics.answer]);
      const device = await join(clientCredentials);
      for (const topic of [topics.request, topics.deviceReadings, topics.answer])
        await device.client.publishAsync(topic, topic, { qos: 1 });
      await until('request and readings', () => controller.heard.length === 2);
      expect(controller.heard.map(({ topic }) => topic)).toEqual([topics.request, topics.deviceReadings]);
      expect(await isRefused(start({ ...clientCredentials, clientId: 'the-controller' }))).toMatch(
        /not authorized/i,
      );
    });
  });

  it('cuts a connection that sends a huge packet, and serves the others', async () => {
    const huge = await join();
    const other = await join();
    huge.client.publish('test/huge', Buffer.alloc(300_000));
    await until('the cut', () => !huge.client.connected);
    await other.client.subscribeAsync('test/#');
    await settle(other, other);
  });

  it('outlives bytes that are no MQTT', async () => {
    const socket = connectSocket(Number(new URL(broker.url).port), '127.0.0.1');
    const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
    socket.on('error', () => undefined);
    socket.write('GET / HTTP/1.1\r\nHost: x\r\n\r\n');
    await closed;
    const client = await join();
    await client.client.subscribeAsync('test/#');
    await settle(client, client);
  });

  it('outlives topics with many levels', async () => {
    const client = await join();
    client.client.publish('a/'.repeat(20), 'x');
    await until('the cut', () => !client.client.connected);
    const other = await join();
    await other.client.subscribeAsync('test/#');
    await settle(other, other);
  });

  it('turns away connections beyond its limit', async () => {
    const sockets = Array.from({ length: 80 }, () =>
      connectSocket(Number(new URL(broker.url).port), '127.0.0.1'),
    );
    for (const socket of sockets) socket.on('error', () => undefined);
    await until('the surplus to be closed', () => sockets.filter(({ closed }) => closed).length === 80 - 64);
    for (const socket of sockets) socket.destroy();
    await until('a place to be free', async () => {
      const joined = start();
      return new Promise<boolean>((resolve) => {
        joined.client.once('connect', () => resolve(true));
        joined.client.once('close', () => resolve(false));
      });
    });
  });

  it('says in words that its port is taken', async () => {
    const port = Number(new URL(broker.url).port);
    const second = startBroker({ host: '127.0.0.1', port, site });
    await expect(second).rejects.toBeInstanceOf(BrokerStartError);
    await expect(second).rejects.toMatchObject({
      reason: 'port-taken',
      message: `the broker cannot start: port ${port} of 127.0.0.1 is taken by another program`,
    });
  });

  it('says in words that the machine has no such address', async () => {
    await expect(startBroker({ host: '192.0.2.1', port: 0, site })).rejects.toMatchObject({
      reason: 'no-such-address',
    });
  });

  it('closes with clients on it, and frees its port', async () => {
    const client = await join();
    const port = Number(new URL(broker.url).port);
    await broker.close();
    await until('the end', () => !client.client.connected);
    broker = await startBroker({ host: '127.0.0.1', port, site });
  });
});
