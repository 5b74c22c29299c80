import { fork } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { formatAnchor } from '../../controller/clock.ts';
import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import { siteMessageSchema } from '../../shared-types/messages.ts';
import {
  connectPeer,
  mildNoon,
  type Peer,
  type RunningController,
  startController,
  topics,
} from '../support/controller-rig.ts';
import { freePort } from '../support/free-port.ts';
import { startNode } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';
import { until } from '../support/wait.ts';

let folder: TemporaryFolder;
let controller: RunningController | undefined;
let peer: Peer | undefined;

beforeEach(() => {
  folder = temporaryFolder('controller');
});
afterEach(async () => {
  await peer?.end();
  if (controller !== undefined && !controller.hasEnded()) await controller.stop('SIGKILL');
  peer = undefined;
  controller = undefined;
  folder.remove();
});

const path = () => logPath(folder.file('data'), 'quillhaven-wash-house');

function allRecords(): LogRecord[] {
  const reader = openLogReader(path());
  try {
    expect(reader.remarks).toEqual([]);
    return reader.days().flatMap(({ day }) => [...reader.records(day)]);
  } finally {
    reader.close();
  }
}

/** Feeds readings until the condition holds. */
const whileReading = <Found>(what: string, condition: () => Found, values = () => mildNoon) =>
  until(what, () => {
    peer?.sendReadings(values());
    return condition();
  });

describe('the controller as a process', () => {
  it('decides on what the device reads, puts it out and tells it', async () => {
    controller = await startController(folder);
    peer = await connectPeer(controller.brokerUrl);
    const { newest, heard } = peer;
    const snapshot = await whileReading('a trusted reading', () => {
      const found = newest();
      return found?.decision.belief.readings.panOutletC?.quality === 'good' ? found : undefined;
    });
    expect(snapshot).toMatchObject({
      run: 1,
      clockSpeed: 1,
      simulatedClock: false,
      log: { writable: true, remark: null },
    });
    expect(snapshot.decision.reasons.phase.text).not.toBe('');
    expect(heard(topics.status)).toEqual([{ schema: 1, state: 'online' }]);
    const message = siteMessageSchema.parse(heard(topics.site)[0]);
    expect(message).toMatchObject({ siteRevision: 1, settingsRevision: 1 });
    const outputs = await until('outputs', () => heard(topics.deviceOutputs).at(-1));
    expect(outputs).toMatchObject({ schema: 1, expiresInMs: 10_000 });
  });

  it('answers requests and obeys none that is retained, stale or malformed', async () => {
    controller = await startController(folder);
    peer = await connectPeer(controller.brokerUrl);
    const { ask, newest, client } = peer;
    await whileReading('a snapshot', newest);
    const changed = await ask({ kind: 'change-settings', settings: { startDifferenceK: 8 } });
    expect(changed).toMatchObject({ accepted: true, code: 'accepted' });
    await until('the new settings', () => newest()?.settingsRevision === 2);
    const refused = await ask({ kind: 'change-settings', settings: { stopDifferenceK: 9 } });
    expect(refused).toMatchObject({ accepted: false, code: 'settings-refused' });
    const stale = await ask({ kind: 'run-pump', minutes: 5 }, { issuedAtMs: Date.now() - 60_000 });
    expect(stale).toMatchObject({ accepted: false, code: 'expired' });
    const malformed = await ask({ kind: 'run-pump', minutes: 5 }, { lifeMs: 1e9 });
    expect(malformed).toMatchObject({ accepted: false, code: 'malformed' });
    for (const payload of ['', '{', 'null', '{"id":1}', 'x'.repeat(50_000)])
      client.publish(topics.request, payload);
    const alive = await ask({ kind: 'automatic' });
    expect(alive.code).not.toBe('malformed');
    const { site } = siteMessageSchema.parse(peer.heard(topics.site).at(-1));
    expect(site.name).toBe('quillhaven-wash-house');
  });

  it('lets nobody in who does not give the credentials of its site file, and hides them', async () => {
    const passwordFile = folder.file('broker-password');
    writeFileSync(passwordFile, 'sun on the sheet\n');
    const access = { username: 'roof', passwordFile };
    const site = { broker: { host: '127.0.0.1', port: 0, ...access }, publish: {} };
    controller = await startController(folder, { site });
    await expect(connectPeer(controller.brokerUrl)).rejects.toThrow(/not authorized/i);
    peer = await connectPeer(controller.brokerUrl, { username: 'roof', password: 'sun on the sheet' });
    const { newest, ask, heard } = peer;
    await whileReading('a snapshot', newest);
    expect(await ask({ kind: 'automatic' })).toMatchObject({ code: expect.not.stringMatching('malformed') });
    expect(JSON.stringify(heard(topics.site))).not.toContain('broker-password');
  });

  it.each(['SIGTERM', 'SIGINT'] as const)(
    'stops on %s: outputs safe, log closed, monitors told',
    async (signal) => {
      controller = await startController(folder);
      peer = await connectPeer(controller.brokerUrl);
      const { heard, newest } = peer;
      await whileReading('a few steps', () => (newest()?.sequence ?? 0) >= 3);
      expect(await controller.stop(signal)).toEqual({ code: 0, signal: null });
      expect(heard(topics.deviceOutputs).at(-1)).toMatchObject({ pumpFraction: 0, drainOpen: true });
      expect(heard(topics.status).at(-1)).toEqual({ schema: 1, state: 'stopped' });
      expect(allRecords().length).toBeGreaterThanOrEqual(3);
      const reader = openLogReader(path());
      expect(reader.events(1)[0]?.kind).toBe('controller-stopped');
      reader.close();
    },
  );

  it('stops when the process that started it is gone', async () => {
    const site = writeSite(folder.file('site.yaml'), demoContent());
    const child = fork('controller/main.mjs', ['--site', site, '--data', folder.file('data')], {
      silent: true,
    });
    await once(child.stdout as NodeJS.ReadableStream, 'data');
    child.disconnect();
    expect(await once(child, 'exit')).toEqual([0, null]);
  });

  it('goes on after being killed, its totals neither lost nor doubled', async () => {
    // A summer's noon at the demo's place: by night nothing is filled, whatever the sensors say.
    const showsMs = Date.UTC(2031, 5, 21, 14);
    const args = ['--clock', formatAnchor({ showsMs, atWallMs: Date.now(), speed: 30 })];
    let heatJ = 0;
    for (const run of [1, 2, 3]) {
      controller = await startController(folder, { args });
      peer = await connectPeer(controller.brokerUrl);
      const { newest } = peer;
      const heatHomeJ = () => newest()?.decision.meter.total.heatHomeJ ?? 0;
      const flowing = () => ({
        ...mildNoon,
        flowLMin: (newest()?.decision.outputs.pumpFraction ?? 0) > 0 ? 20 : 0,
      });
      const counted = () => newest()?.run === run && heatHomeJ() > heatJ;
      await whileReading(`heat of run ${run}`, counted, flowing);
      heatJ = heatHomeJ();
      await controller.stop('SIGKILL');
      await peer.end();
    }
    const records = allRecords();
    expect([...new Set(records.map(({ run }) => run))]).toEqual([1, 2, 3]);
    for (const run of [1, 2, 3]) {
      const steps = records.filter((record) => record.run === run).map(({ step }) => step);
      expect(steps).toEqual(steps.map((_, index) => index + 1));
    }
    records.slice(1).forEach(({ outcome, run }, index) => {
      const before = records[index] as LogRecord;
      const names = ['heatHomeJ', 'heatLostJ', 'electricityJ', 'pumpRunS'] as const;
      for (const name of names)
        expect(outcome.total[name]).toBeGreaterThanOrEqual(before.outcome.total[name]);
      // The first step of a run does not know how long nobody looked, and counts nothing.
      if (run !== before.run) expect(outcome.total).toEqual(before.outcome.total);
    });
  });

  it('makes its outputs safe before it ends on a failure that nobody foresaw', async () => {
    const failure = `setTimeout(() => { throw new Error('on purpose') }, 4000)`;
    controller = await startController(folder, { nodeArgs: ['--import', `data:text/javascript,${failure}`] });
    peer = await connectPeer(controller.brokerUrl);
    expect(await controller.ended).toEqual({ code: 1, signal: null });
    expect(controller.output()).toMatch(/Error: on purpose/);
    expect(peer.heard(topics.deviceOutputs).at(-1)).toMatchObject({ pumpFraction: 0, drainOpen: true });
    expect(allRecords().length).toBeGreaterThan(0);
  });

  it('controls without its log when that is damaged, and says so', async () => {
    controller = await startController(folder);
    await controller.stop();
    const bytes = readFileSync(path());
    writeFileSync(path(), bytes.fill(0x5a, 100));
    const damaged = readFileSync(path());
    controller = await startController(folder);
    peer = await connectPeer(controller.brokerUrl);
    const { newest } = peer;
    const snapshot = await whileReading('a snapshot', newest);
    expect(snapshot.log).toEqual({ writable: false, remark: expect.stringMatching(/damaged/) });
    expect(controller.output()).toMatch(/nothing is logged: the log is damaged/);
    expect(await controller.stop()).toEqual({ code: 0, signal: null });
    expect(readFileSync(path())).toEqual(damaged);
  });
});

describe('a start that cannot be', () => {
  const run = async (...args: string[]) => {
    const program = startNode('controller/main.mjs', [...args, '--data', folder.file('data')]);
    const { code } = await program.ended;
    return { code, lines: program.output().trim().split('\n') };
  };

  it('names each fault of the site file in a line of its own, and starts nothing', async () => {
    const content = demoContent({ outlet: 'up', title: 5, kontrol: {} });
    const site = writeSite(folder.file('site.yaml'), content);
    const { code, lines } = await run('--site', site);
    expect(code).toBe(2);
    expect(lines.map((line) => line.replace(site, 'F'))).toEqual([
      'F:3: title: found 5; allowed: a text',
      expect.stringMatching(/^F:\d+: outlet: found "up"; allowed: low, high-with-low-drain, corner$/),
      expect.stringMatching(/^F:\d+: kontrol: found an unknown key; allowed: control, perhaps; /),
    ]);
    expect(() => readFileSync(path())).toThrow();
  });

  it('is one without its site file, with a wrong option or a wrong clock', async () => {
    expect(await run('--site', folder.file('none.yaml'))).toMatchObject({ code: 2 });
    expect(await run()).toMatchObject({ code: 2 });
    const site = writeSite(folder.file('site.yaml'), demoContent());
    for (const wrong of [['--colour'], ['--clock', 'noon'], ['--broker-port', '70000']])
      expect((await run('--site', site, ...wrong)).code, wrong.join(' ')).toBe(2);
  });

  it('is one whose broker wants a password that nobody can read, or none', async () => {
    const passwordFile = folder.file('broker-password');
    const broker = { host: '127.0.0.1', port: 0, username: 'roof', passwordFile };
    const site = writeSite(folder.file('site.yaml'), demoContent({ broker }));
    const unread = await run('--site', site);
    expect([unread.code, unread.lines.join()]).toEqual([
      2,
      expect.stringMatching(/of broker cannot be read/),
    ]);
    writeFileSync(passwordFile, '\nsecond line');
    const empty = await run('--site', site);
    expect([empty.code, empty.lines.join()]).toEqual([2, expect.stringMatching(/has an empty first line/)]);
  });

  it('is one on a port that is taken', async () => {
    const port = await freePort();
    controller = await startController(folder, { args: ['--broker-port', String(port)] });
    expect(controller.brokerUrl).toBe(`mqtt://127.0.0.1:${port}`);
    const { code, lines } = await run('--site', folder.file('site.yaml'), '--broker-port', String(port));
    expect(code).toBe(3);
    expect(lines.join()).toMatch(/taken by another program/);
  });
});
