import { existsSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import type { SnapshotMessage } from '../../shared-types/messages.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { openDoor, type Started, startAll } from './started.ts';

const site = 'quillhaven-wash-house';
const top = temporaryFolder('start').path;
const data = join(top, 'data');
const log = logPath(data, site);
const patience = { timeout: 60_000, interval: 100 };

const started: Started[] = [];
function start(...more: string[]): Started {
  const one = startAll(['--no-window', '--port', '0', '--speed', '60', '--data', data, ...more]);
  started.push(one);
  return one;
}
afterEach(async () => {
  for (const one of started.splice(0)) {
    one.signal('SIGKILL');
    await one.gone();
  }
});
afterAll(() => rmSync(top, { recursive: true }));

type Door = Awaited<ReturnType<typeof openDoor>>;
const snapshotOf = (door: Door) =>
  vi.waitFor(async (): Promise<SnapshotMessage> => {
    const reply = await door.call('sites', {});
    const snapshot = reply.ok ? reply.result[0]?.snapshot : undefined;
    const store = snapshot?.decision.belief.readings.storeBottomC;
    if (snapshot === undefined || snapshot === null || store?.quality !== 'good')
      throw new Error(`nothing good is measured yet: ${JSON.stringify(snapshot)}`);
    return snapshot;
  }, patience);

function integrity(): unknown {
  const database = new DatabaseSync(log, { readOnly: true });
  try {
    return database.prepare('PRAGMA integrity_check').get()?.['integrity_check'];
  } finally {
    database.close();
  }
}

function newestMs(): number {
  const reader = openLogReader(log);
  try {
    return reader.newestMs() ?? Number.NaN;
  } finally {
    reader.close();
  }
}

/** Ends it with a signal, and sees that it went as it should. */
async function endWell(one: Started, signal: NodeJS.Signals): Promise<void> {
  one.signal(signal);
  expect(await one.ended()).toBe(0);
  await one.gone();
  expect(one.complained).toEqual([]);
  expect(integrity()).toBe('ok');
}

describe('the start command', () => {
  it('runs the whole job on a first start: page, live values, requests, recorded days, replay', async () => {
    const from = '2031-06-21T09:00:00Z';
    const one = start('--from', from);
    const url = await one.url();
    const page = await fetch(url);
    expect(page.status).toBe(200);
    expect(page.headers.get('Content-Security-Policy')).toContain("default-src 'none'");
    expect(one.printed.join('\n')).toContain('simulated');

    const door = await openDoor(url);
    const snapshot = await snapshotOf(door);
    expect(snapshot).toMatchObject({ site, clockSpeed: 60, simulatedClock: true, log: { writable: true } });
    const answer = await door.call('request', { site, operation: { kind: 'run-pump', minutes: 10 } });
    expect(answer).toMatchObject({ ok: true, result: { accepted: true } });

    const days = await door.call('days', { site });
    if (!days.ok) throw new Error(days.problem.text);
    expect(days.result.length).toBeGreaterThanOrEqual(4);
    const day = days.result.map((known) => known.day).sort()[1] ?? '';
    expect(await door.call('replay', { site, day })).toMatchObject({ ok: true, result: { day, same: true } });
    expect((await door.call('recent', { site, hours: 6 })).ok).toBe(true);

    // The calendar began where it was told to, and the device was there before the controller missed it.
    const { decision } = await snapshotOf(door);
    expect(decision.nowMs).toBeGreaterThanOrEqual(Date.parse(from));
    expect(decision.alarms).toEqual([]);
    door.close();
    await endWell(one, 'SIGINT');
  });

  it('goes on where the log stopped, and stops on SIGTERM', async () => {
    const before = newestMs();
    const one = start();
    const door = await openDoor(await one.url());
    const { decision, sequence } = await snapshotOf(door);
    expect(decision.nowMs).toBeGreaterThan(before);
    // The calendar went on from the log and ran 60 times as fast as this test.
    expect(decision.nowMs - before).toBeLessThan(60 * patience.timeout);
    expect(sequence).toBeGreaterThan(0);
    expect(one.printed.join('\n')).not.toContain('first start');
    door.close();
    await endWell(one, 'SIGTERM');
    expect(newestMs()).toBeGreaterThan(before);
  });

  it('stops whole on Ctrl-C, also on several', async () => {
    const one = start();
    await one.url();
    const impatience = setInterval(() => one.signal('SIGINT'), 10);
    await endWell(one, 'SIGINT').finally(() => clearInterval(impatience));
  });

  it.each([
    ['controller', 'controller/main.mjs'],
    ['device', 'sim/device/main.ts'],
  ])('stops the rest and says so when the %s dies', async (name, part) => {
    const one = start();
    await one.url();
    process.kill(one.childPid(part) ?? Number.NaN, 'SIGKILL');
    expect(await one.ended()).toBe(1);
    await one.gone();
    expect(one.complained.join('\n')).toContain(`the ${name} ended with SIGKILL`);
    expect(integrity()).toBe('ok');
  });

  it('takes its children along when it is killed itself', async () => {
    const one = start();
    await one.url();
    one.signal('SIGKILL');
    await one.ended();
    await one.gone();
    expect(integrity()).toBe('ok');
  });

  it('leaves no log when a first start is broken off while it records', async () => {
    const fresh = join(top, 'fresh');
    const one = start('--data', fresh);
    await vi.waitFor(() => expect(one.printed.join('\n')).toContain('first start'), patience);
    one.signal('SIGINT');
    expect(await one.ended()).toBe(0);
    await one.gone();
    expect(existsSync(logPath(fresh, site))).toBe(false);
  });
});

describe('the start command refuses in words and starts nothing', () => {
  it('a port that is taken', async () => {
    const holder = createServer();
    await new Promise<void>((resolve) => holder.listen(0, '127.0.0.1', resolve));
    const { port } = holder.address() as AddressInfo;
    const one = start('--port', String(port));
    expect(await one.ended()).toBe(1);
    expect(one.complained).toEqual([`flatwater: port ${port} is taken; choose another with --port`]);
    await new Promise((resolve) => holder.close(resolve));
  });

  it('a data folder that cannot be', async () => {
    writeFileSync(join(top, 'file'), '');
    const one = start('--data', join(top, 'file'));
    expect(await one.ended()).toBe(1);
    expect(one.complained).toEqual([expect.stringMatching(/cannot be written: a file has its name/)]);
  });

  it('a calendar that would go back behind the log', async () => {
    const one = start('--from', '2020-01-01T00:00:00Z');
    expect(await one.ended()).toBe(1);
    expect(one.complained).toEqual([expect.stringContaining('--from cannot lie before')]);
  });
});

describe('the start command with a scenario', () => {
  it('plays a scenario on its own day, with a log of its own', async () => {
    const one = start('--scenario', 'sim/scenarios/days/welded-relay.yaml');
    const door = await openDoor(await one.url());
    const { decision, site: played } = await snapshotOf(door);
    expect(played).toBe(site);
    expect(new Date(decision.nowMs).getUTCFullYear()).toBe(2031);
    expect(existsSync(logPath(join(data, 'scenarios', 'welded-relay'), site))).toBe(true);
    door.close();
  });
});
