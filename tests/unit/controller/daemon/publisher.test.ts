import { connectAsync, type MqttClient } from 'mqtt';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openPublisher, type Publisher } from '../../../../controller/daemon/publisher.ts';
import { type RunningBroker, startBroker } from '../../../../controller/links/broker.ts';
import { type SnapshotMessage, siteTopics } from '../../../../shared-types/messages.ts';
import { defaultSettings } from '../../../../shared-types/settings.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';
import { until } from '../../../support/wait.ts';

const access = { username: 'someone', passwordFile: 'secret.txt' };
const site = siteOf(demoContent({ publish: access, broker: { port: 0, ...access } }));
const topics = siteTopics(site.name);
const snapshot = (sequence: number) => ({ schema: 1, sequence }) as SnapshotMessage;

let broker: RunningBroker;
let publisher: Publisher | undefined;
let monitor: MqttClient | undefined;
let requests: [string, boolean][];
let heard: [string, unknown][];

beforeEach(async () => {
  [requests, heard] = [[], []];
  broker = await startBroker({ host: '127.0.0.1', port: 0, site });
});
afterEach(async () => {
  await publisher?.close();
  await monitor?.endAsync(true);
  await broker.close();
});

function publish(): Publisher {
  publisher = openPublisher({
    url: broker.url,
    credentials: broker.controllerCredentials,
    siteName: site.name,
    onRequest: (payload, retained) => requests.push([Buffer.from(payload).toString(), retained]),
    onLost: () => undefined,
    onBack: () => undefined,
  });
  return publisher;
}

async function watch(): Promise<MqttClient> {
  const client = await connectAsync(broker.url, { protocolVersion: 4, reconnectPeriod: 0 });
  monitor = client;
  client.on('message', (topic, payload) => heard.push([topic, JSON.parse(payload.toString())]));
  await client.subscribeAsync([topics.status, topics.site, topics.snapshot, topics.answer], { qos: 1 });
  return client;
}

const heardOn = (topic: string) => heard.filter(([on]) => on === topic).map(([, content]) => content);
const online = { schema: 1, state: 'online' };

describe('the publisher', () => {
  it('tells site, status and the newest snapshot, kept for whoever comes later', async () => {
    const { site: tellSite, snapshot: tell } = publish();
    tell(snapshot(1));
    tell(snapshot(2));
    tellSite({ schema: 1, site, siteRevision: 1, settings: defaultSettings, settingsRevision: 1 });
    await until('the status', async () => {
      if (monitor === undefined) await watch();
      return (
        heardOn(topics.status).length > 0 &&
        heardOn(topics.site).length > 0 &&
        heardOn(topics.snapshot).length > 0
      );
    });
    expect(heardOn(topics.snapshot)).toEqual([snapshot(2)]);
    expect(heardOn(topics.status)).toEqual([online]);
    expect(heardOn(topics.site)).toMatchObject([{ site: { name: site.name, publish: {} } }]);
  });

  it('keeps names of users and of password files to itself', async () => {
    await watch();
    publish().site({ schema: 1, site, siteRevision: 1, settings: defaultSettings, settingsRevision: 1 });
    await until('the site', () => heardOn(topics.site).length > 0);
    expect(JSON.stringify(heard)).not.toMatch(/someone|secret/);
  });

  it('hands requests on and answers them, without keeping the answer', async () => {
    const client = await watch();
    const { answer } = publish();
    await until('the status', () => heardOn(topics.status).length > 0);
    client.publish(topics.request, 'please', { qos: 1 });
    await until('the request', () => requests.length > 0);
    expect(requests).toEqual([['please', false]]);
    answer({ id: 'request-1', accepted: true, code: 'accepted', text: 'Yes.' });
    await until('the answer', () => heardOn(topics.answer).length > 0);
    heard = [];
    await client.unsubscribeAsync(topics.answer);
    await client.subscribeAsync([topics.answer, topics.status], { qos: 1 });
    await until('what is kept', () => heardOn(topics.status).length > 0);
    expect(heardOn(topics.answer)).toEqual([]);
  });

  it('says goodbye when it is closed', async () => {
    await watch();
    const { close } = publish();
    await until('the status', () => heardOn(topics.status).length > 0);
    await close();
    await until('the goodbye', () => heardOn(topics.status).length > 1);
    expect(heardOn(topics.status)).toEqual([online, { schema: 1, state: 'stopped' }]);
  });
});
