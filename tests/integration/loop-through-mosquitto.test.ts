import { connect, type MqttClient } from 'mqtt';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type SnapshotMessage, siteTopics, snapshotMessageSchema } from '../../shared-types/messages.ts';
import { expectSteadyTotals, expectWholeLog, loggedRecords } from '../support/log-checks.ts';
import { type MosquittoBroker, startMosquitto } from '../support/mosquitto.ts';
import type { Program } from '../support/process.ts';
import {
  clearNoonMs,
  clockFrom,
  type LoopFlags,
  startController,
  startDevice,
} from '../support/running-loop.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';
import { sleep, until } from '../support/wait.ts';

const site = 'quillhaven-wash-house';
const topics = siteTopics(site);
const outageMs = 10_000;

interface DeviceFeedback {
  readonly pumpFraction: number;
  readonly drainOpen: boolean;
  readonly expired: boolean;
}

/** Controller, device and a guest who listens, each on its own connection to a Mosquitto. */
describe('the loop through Mosquitto, its broker gone for 10 s', () => {
  let broker: MosquittoBroker;
  let folder: TemporaryFolder;
  let flags: LoopFlags;
  let controller: Program;
  let device: Program;
  let guest: MqttClient;
  const snapshots: SnapshotMessage[] = [];
  const feedback: DeviceFeedback[] = [];

  beforeAll(async () => {
    folder = temporaryFolder('loop');
    broker = await startMosquitto();
    flags = {
      siteFile: writeSite(folder.file('site.yaml'), siteThrough(broker)),
      dataFolder: folder.file('data'),
      clock: clockFrom(clearNoonMs, 60),
      device: [
        ...['--broker', broker.url, '--username', broker.username('device')],
        ...['--password-file', broker.passwordFile('device')],
      ],
    };
    guest = listenAsGuest(broker, snapshots, feedback);
    device = await startDevice(flags);
    controller = await startController(flags);
  });
  afterAll(async () => {
    guest.end(true);
    await Promise.all([controller.stop('SIGKILL'), device.stop('SIGKILL')]);
    await broker.stop();
    folder.remove();
  });

  it('runs the pump, falls safe without the broker, comes back by itself, and keeps its books', async () => {
    await until('the pump to run at the device', () => (feedback.at(-1)?.pumpFraction ?? 0) > 0, 60_000);
    await until('a snapshot of it', () => (snapshots.at(-1)?.decision.outputs.pumpFraction ?? 0) > 0);
    const before = { steps: snapshots.length, feedback: feedback.length, newest: snapshots.at(-1) };

    await broker.kill();
    await sleep(outageMs);
    // Held still while the broker returns, it cannot renew anything before the device has spoken.
    controller.child.kill('SIGSTOP');
    await broker.restart();
    await until('feedback after the outage', () => feedback.length > before.feedback);
    controller.child.kill('SIGCONT');
    expect(feedback[before.feedback]).toMatchObject({ pumpFraction: 0, drainOpen: true, expired: true });

    await until('a snapshot after the outage', () => snapshots.length > before.steps);
    const connected = () => snapshots.at(-1)?.link.connected;
    await until('the link in the snapshots', connected);
    await until('the device to obey again', () => feedback.at(-1)?.expired === false);
    const newest = snapshots.at(-1);
    expect(newest?.run).toBe(before.newest?.run);
    expect(newest?.link.losses).toBe(1);
    expect(newest?.log).toEqual({ writable: true, remark: null });

    await until('some steps more', () => snapshots.length > before.steps + 10);
    expect(await controller.stop('SIGTERM')).toEqual({ code: 0, signal: null });
    expectBooks();
  });

  function expectBooks(): void {
    const records = loggedRecords(flags.dataFolder, site);
    expectWholeLog(records);
    expectSteadyTotals(records);
    // Whatever was told to anybody is in the log, as it was told.
    const logged = new Map(records.map((record) => [`${record.run}/${record.step}`, record]));
    for (const { run, sequence, decision } of snapshots) {
      const record = logged.get(`${run}/${sequence}`);
      expect(record?.input.nowMs).toBe(decision.nowMs);
      expect(record?.outcome.total).toEqual(decision.meter.total);
      expect(record?.outcome.outputs).toEqual(decision.outputs);
    }
    expect(records.at(-1)?.outcome.total.pumpRunS).toBeGreaterThan(0);
  }
});

function siteThrough(broker: MosquittoBroker) {
  const account = {
    url: broker.url,
    username: broker.username('controller'),
    passwordFile: broker.passwordFile('controller'),
  };
  const { broker: _embedded, link, ...content } = demoContent();
  return {
    ...content,
    link: { ...(link as object), ...account },
    publish: account,
    control: { stepS: 3, outputExpiryS: 10 },
  };
}

function listenAsGuest(
  broker: MosquittoBroker,
  snapshots: SnapshotMessage[],
  feedback: DeviceFeedback[],
): MqttClient {
  const guest = connect(broker.url, {
    protocolVersion: 4,
    username: broker.username('guest'),
    password: broker.password('guest'),
    reconnectPeriod: 200,
  });
  guest.on('error', () => undefined);
  guest.on('connect', () => guest.subscribe([topics.snapshot, topics.deviceFeedback]));
  guest.on('message', (topic, payload, { retain }) => {
    if (retain) return;
    const message: unknown = JSON.parse(payload.toString());
    if (topic === topics.snapshot) snapshots.push(snapshotMessageSchema.parse(message));
    else feedback.push(message as DeviceFeedback);
  });
  return guest;
}
