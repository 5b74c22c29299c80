import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { Aedes } from 'aedes';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createHost, type HostOptions, type MonitorHost } from '../../../desktop/host/host.ts';
import { type RequestMessage, requestMessageSchema, siteTopics } from '../../../shared-types/messages.ts';
import type { MonitorEvent } from '../../../shared-types/monitor-api.ts';
import { siteName, snapshot } from './samples.ts';

const topics = siteTopics(siteName);
const soon = { timeout: 20_000, interval: 20 };

let broker: Aedes;
let server: ReturnType<typeof createServer>;
const hosts: MonitorHost[] = [];

beforeEach(async () => {
  broker = await Aedes.createBroker();
  server = createServer(broker.handle);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});

afterEach(async () => {
  await Promise.all(hosts.splice(0).map((host) => host.close()));
  await new Promise<void>((resolve) => broker.close(() => resolve()));
  await new Promise<void>((resolve) => server.close(() => resolve()));
});

const address = () => `mqtt://127.0.0.1:${(server.address() as AddressInfo).port}`;

function hostAt(options: Partial<HostOptions> = {}): MonitorHost {
  const host = createHost({
    brokerUrl: options.brokerUrl ?? address(),
    dataFolder: `${tmpdir()}/no-such-folder`,
    ...options,
  });
  hosts.push(host);
  return host;
}

const send = (topic: string, message: unknown, retain = true) =>
  new Promise<void>((resolve, reject) => {
    const payload = Buffer.from(typeof message === 'string' ? message : JSON.stringify(message));
    const packet = { cmd: 'publish', qos: 0, dup: false, topic, payload, retain } as const;
    broker.publish(packet, (error) => (error ? reject(error) : resolve()));
  });

/** A controller that answers every request in the same way. */
const answerAll = (heard: RequestMessage[], answer: (request: RequestMessage) => unknown) =>
  broker.subscribe(
    topics.request,
    ({ payload, retain }, done) => {
      expect(retain).toBe(false);
      const request = requestMessageSchema.parse(JSON.parse(payload.toString()));
      heard.push(request);
      void send(topics.answer, { schema: 1, answer: answer(request) }, false);
      done();
    },
    () => undefined,
  );

const stateOf = async (host: MonitorHost) => {
  const reply = await host.call('hostState', {});
  if (!reply.ok) throw new Error(reply.problem.text);
  return reply.result;
};
const connected = (host: MonitorHost) =>
  vi.waitFor(async () => expect((await stateOf(host)).brokerConnected).toBe(true), soon);
const sitesOf = async (host: MonitorHost) => {
  const reply = await host.call('sites', {});
  return reply.ok ? reply.result : [];
};

describe('createHost', () => {
  it('knows what controllers left at the broker, and tells what comes after', async () => {
    await send(topics.snapshot, snapshot());
    const host = hostAt();
    await vi.waitFor(async () => expect((await sitesOf(host))[0]?.snapshot).toEqual(snapshot()), soon);
    const events: MonitorEvent[] = [];
    host.listen((event) => events.push(event));
    await send(topics.snapshot, snapshot({ sequence: 2 }));
    await vi.waitFor(
      () =>
        expect(events).toContainEqual({ kind: 'live', live: expect.objectContaining({ name: siteName }) }),
      soon,
    );
    expect((await sitesOf(host))[0]?.snapshot?.sequence).toBe(2);
  });

  it('ignores what it cannot understand, and says so once a topic', async () => {
    const host = hostAt();
    await connected(host);
    const spoilt = () => send(topics.snapshot, '{"schema":', false);
    // A line that is up may not be listening yet.
    await vi.waitFor(async () => {
      await spoilt();
      expect((await stateOf(host)).problems).toHaveLength(1);
    }, soon);
    await spoilt();
    await vi.waitFor(
      async () =>
        expect((await stateOf(host)).problems).toEqual([
          { severity: 'warning', text: expect.stringMatching(/^\d+ messages on .*snapshot .*not JSON/) },
        ]),
      soon,
    );
    expect(await sitesOf(host)).toEqual([]);
  });

  it('asks the controller and brings its answer', async () => {
    const heard: RequestMessage[] = [];
    answerAll(heard, ({ id }) => ({ id, accepted: true, code: 'accepted', text: 'The pump runs.' }));
    await send(topics.status, { schema: 1, state: 'online' });
    const host = hostAt();
    await vi.waitFor(async () => expect(await sitesOf(host)).toHaveLength(1), soon);
    const reply = await host.call('request', { site: siteName, operation: { kind: 'run-pump', minutes: 5 } });
    expect(reply).toMatchObject({ ok: true, result: { accepted: true, text: 'The pump runs.' } });
    expect(heard).toMatchObject([{ operation: { kind: 'run-pump', minutes: 5 }, lifeMs: 8000 }]);
    expect(Math.abs(Date.now() - (heard[0]?.issuedAtMs ?? 0))).toBeLessThan(60_000);
  });

  it.each([
    ['a site that was not heard', 'elsewhere', 'online', /no controller of elsewhere/],
    ['a controller that is gone', siteName, 'lost', /not running/],
    ['a controller that was stopped', siteName, 'stopped', /not running/],
    ['a name that is a path', '../elsewhere', 'online', /No site has such a name/],
  ])('refuses at once to ask %s', async (_what, site, state, words) => {
    await send(topics.status, { schema: 1, state });
    const host = hostAt();
    await vi.waitFor(async () => expect(await sitesOf(host)).toHaveLength(1), soon);
    const reply = await host.call('request', { site, operation: { kind: 'empty' } });
    expect(reply).toMatchObject({ ok: false, problem: { text: expect.stringMatching(words) } });
  });

  it('refuses at once without a broker, says why there is none, and finds it when it comes', async () => {
    const { port } = server.address() as AddressInfo;
    await new Promise<void>((resolve) => server.close(() => resolve()));
    const host = hostAt({ brokerUrl: `mqtt://127.0.0.1:${port}` });
    await vi.waitFor(
      async () =>
        expect((await stateOf(host)).problems).toMatchObject([
          { severity: 'error', text: expect.stringContaining('nothing listens') },
        ]),
      soon,
    );
    const reply = await host.call('request', { site: siteName, operation: { kind: 'empty' } });
    expect(reply).toMatchObject({ ok: false, problem: { text: expect.stringContaining('no connection') } });
    await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
    await connected(host);
    expect((await stateOf(host)).problems).toEqual([]);
  });

  it('says that the broker refuses its name or password', async () => {
    broker.authenticate = (_client, _name, _password, done) =>
      done(Object.assign(new Error('who are you'), { returnCode: 5 }), false);
    const host = hostAt({ username: 'owner' });
    await vi.waitFor(
      async () =>
        expect((await stateOf(host)).problems).toMatchObject([
          { text: expect.stringContaining('name or password') },
        ]),
      soon,
    );
  });

  it.each([
    ['an address that is none', { brokerUrl: 'quill://here' }],
    ['an address that breaks off', { brokerUrl: 'mqtt://%E0%A4%A@127.0.0.1' }],
    ['a password file that is not there', { username: 'owner', passwordFile: '/no/such/file' }],
  ])('starts with %s, and says so', async (_what, options) => {
    const state = await stateOf(hostAt(options));
    expect(state).toMatchObject({ brokerConnected: false, problems: [{ severity: 'error' }] });
  });

  it('never shows a password that its address carries', async () => {
    const host = hostAt({ brokerUrl: address().replace('mqtt://', 'mqtt://owner:heron@') });
    await connected(host);
    expect(JSON.stringify(await stateOf(host))).not.toMatch(/heron|owner/);
  });

  it('never shows a password that its address carries in a way that breaks it', async () => {
    const state = await stateOf(hostAt({ brokerUrl: 'mqtt://owner:1/heron@127.0.0.1:1883' }));
    expect(state.problems).toMatchObject([{ text: expect.stringContaining('%2F') }]);
    expect(JSON.stringify(state)).not.toMatch(/heron|owner/);
  });

  it.each(['days', 'day', 'recent', 'events', 'logFacts', 'replay'] as const)(
    'says about %s that there is no log on this machine',
    async (method) => {
      const params = {
        days: {},
        day: { day: '2031-06-21' },
        recent: { hours: 1 },
        events: { limit: 1 },
        logFacts: {},
        replay: { day: '2031-06-21' },
      }[method];
      const reply = await hostAt().call(method, { site: siteName, ...params } as never);
      expect(reply).toMatchObject({
        ok: false,
        problem: { severity: 'note', text: expect.stringContaining('no log') },
      });
    },
  );

  it('refuses parameters that the method does not know', async () => {
    const reply = await hostAt().call('recent', { site: siteName, hours: 1e9 });
    expect(reply).toMatchObject({ ok: false, problem: { text: expect.stringContaining('hours') } });
  });
});
