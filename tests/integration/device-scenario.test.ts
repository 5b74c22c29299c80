import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import mqtt, { type MqttClient } from 'mqtt';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatAnchor } from '../../controller/clock.ts';
import { type SnapshotMessage, siteTopics, snapshotMessageSchema } from '../../shared-types/messages.ts';
import { type Program, startNode } from '../support/process.ts';
import { clearNoonMs, clockFrom, startController } from '../support/running-loop.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';
import { until } from '../support/wait.ts';

const siteFile = resolve('sim/scenarios/quillhaven-wash-house.yaml');
const topics = siteTopics('quillhaven-wash-house');
/** The Azores show UTC in summer: the calendar begins at 13:00 of a clear day. */
const scenario = `schema: 1
title: A clear noon with a broken wire
site: ${siteFile}
startsAt: 2031-06-21T13:00
weather: { kinds: [clear] }
water: { storeC: 30 }
faults:
  - { name: sensor-open, channel: panSheetC, from: '13:02' }
`;

/** The controller as it is, and a device that plays a scenario sixty times as fast as the wall. */
describe('a scenario behind the embedded broker', () => {
  let folder: TemporaryFolder;
  let controller: Program;
  let device: Program;
  let guest: MqttClient;
  const snapshots: SnapshotMessage[] = [];

  beforeAll(async () => {
    folder = temporaryFolder('scenario');
    const clock = clockFrom(clearNoonMs, 60);
    const anchor = formatAnchor(clock);
    controller = await startController({ siteFile, dataFolder: folder.file('data'), clock, device: [] });
    const [, url = ''] = await controller.line(/broker (mqtt:\S+)/);
    const file = folder.file('s.yaml');
    writeFileSync(file, scenario);
    device = startNode('sim/device/main.ts', [
      ...['--scenario', file, '--broker', url, '--clock', anchor],
      ...['--fault', 'sensor-short:storeTopC@13:03'],
    ]);
    await device.line(/^device ready$/);
    guest = await mqtt.connectAsync(url);
    guest.on('message', (_, payload) => {
      snapshots.push(snapshotMessageSchema.parse(JSON.parse(payload.toString())));
    });
    await guest.subscribeAsync(topics.snapshot);
  });
  afterAll(async () => {
    await guest.endAsync(true);
    await Promise.all([controller.stop('SIGKILL'), device.stop('SIGKILL')]);
    folder.remove();
  });

  const decision = () => snapshots.at(-1)?.decision;
  const reading = (channel: 'panSheetC' | 'storeTopC' | 'storeBottomC') =>
    decision()?.belief.readings[channel];
  const alarmed = (code: string) =>
    decision()?.alarms.some((alarm) => alarm.code === code && alarm.active) === true;
  const raise = (message: object) =>
    guest.publishAsync(topics.deviceFault, JSON.stringify({ schema: 1, active: true, ...message }));

  it('raises faults from its file, from the command line and from a message', async () => {
    await until('the open wire of the file', () => {
      const sheet = reading('panSheetC');
      return sheet?.quality === 'failed' && sheet.cause === 'open-circuit';
    });
    await until('the short wires of the command line', () => {
      const top = reading('storeTopC');
      return top?.quality === 'failed' && top.cause === 'short-circuit';
    });
    expect(reading('storeBottomC')?.quality).toBe('good');
    await raise({ name: 'sensor-intermittent', channel: 'storeBottomC', size: 1 });
    await until('the missing bottom of the store', () => reading('storeBottomC')?.quality === 'failed');
    await until('its alarm', () => alarmed('store-sensor-failed'));
    await raise({ name: 'sensor-intermittent', channel: 'storeBottomC', active: false });
    await until('the bottom of the store again', () => reading('storeBottomC')?.quality === 'good');
  });

  it('lets the pump fill the pan, and everything fall silent without power', async () => {
    await until('the pump to run', () => (decision()?.outputs.pumpFraction ?? 0) > 0, 60_000);
    await raise({ name: 'power-cut' });
    await until('the alarm of silence', () => alarmed('all-sensors-silent'));
    expect(decision()?.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    await raise({ name: 'power-cut', active: false });
    await until('the readings again', () => reading('storeBottomC')?.quality === 'good');
    await until('the end of the alarm', () => !alarmed('all-sensors-silent'));
    await until('the pump to run again', () => (decision()?.outputs.pumpFraction ?? 0) > 0, 60_000);
  });
});
