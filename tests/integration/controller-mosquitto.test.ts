import { afterEach, beforeEach, expect, it } from 'vitest';
import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import {
  connectPeer,
  type Peer,
  type RunningController,
  startController,
  topics,
} from '../support/controller-rig.ts';
import { type MosquittoBroker, startMosquitto } from '../support/mosquitto.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';
import { until } from '../support/wait.ts';

let broker: MosquittoBroker;
let folder: TemporaryFolder;
let controller: RunningController;
let monitor: Peer;
let device: Peer;

const joinAs = (user: 'monitor' | 'device') =>
  connectPeer(broker.url, {
    username: broker.username(user),
    password: broker.password(user),
    reconnectPeriod: 200,
  });

beforeEach(async () => {
  broker = await startMosquitto();
  folder = temporaryFolder('controller');
  const access = { url: broker.url, username: 'controller', passwordFile: broker.passwordFile('controller') };
  const link = { kind: 'mqtt', outputsTopic: topics.deviceOutputs, ...access };
  controller = await startController(folder, { site: { broker: undefined, link, publish: access } });
  [monitor, device] = await Promise.all([joinAs('monitor'), joinAs('device')]);
});
afterEach(async () => {
  if (!controller.hasEnded()) await controller.stop('SIGKILL');
  await Promise.all([monitor.end(), device.end()]);
  await broker.stop();
  folder.remove();
});

const steps = () => monitor.newest()?.sequence ?? 0;
const good = () => {
  device.sendReadings();
  return monitor.newest()?.decision.belief.readings.storeBottomC?.quality === 'good';
};

it('a controller at a broker of its owner runs the loop, and outlives the broker', async () => {
  expect(controller.brokerUrl).toBe('none');
  await until('trusted readings', good);
  const before = steps();
  await broker.kill();
  await until('the loss in words', () => /cannot be reached/.test(controller.output()));
  await broker.restart();
  // What the broker had kept is gone with it: all of this was sent again.
  await until('the status again', () => monitor.heard(topics.status).length > 1);
  expect(monitor.heard(topics.site).length).toBeGreaterThan(1);
  await until('trusted readings again', () => steps() > before && good());
  expect((await monitor.ask({ kind: 'automatic' })).id).toMatch(/^request-/);
  expect(await controller.stop()).toEqual({ code: 0, signal: null });
  const reader = openLogReader(logPath(folder.file('data'), 'quillhaven-wash-house'));
  const kept = [...reader.between(1, 0, Number.MAX_SAFE_INTEGER)].map(({ step }) => step);
  expect(kept).toEqual(kept.map((_, index) => index + 1));
  const told = reader.events(100).filter(({ values }) => values['broker'] === broker.url);
  expect(told.map(({ kind }) => kind)).toEqual(['link-back', 'link-lost']);
  reader.close();
});

it('a controller that is killed is told to be lost by the broker', async () => {
  await until('a step', steps);
  // Else the status could first be heard when it is the last will already.
  await until('its status', () => monitor.heard(topics.status).length > 0);
  await controller.stop('SIGKILL');
  await until('its last will', () => monitor.heard(topics.status).length > 1);
  expect(monitor.heard(topics.status)).toEqual([
    { schema: 1, state: 'online' },
    { schema: 1, state: 'lost' },
  ]);
});
