import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import { serveMonitor, type WebServer } from '../../../desktop/web/server.ts';
import { mostCalls } from '../../../desktop/web/socket.ts';
import type { MonitorApi, MonitorEvent } from '../../../shared-types/monitor-api.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const top = temporaryFolder('web').path;
const pageFolder = join(top, 'web');
const listeners = new Set<(event: MonitorEvent) => void>();
const api: MonitorApi = {
  call: async (method) => ({ ok: true, result: [method] }) as never,
  listen(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};
let server: WebServer;

beforeAll(() => {
  mkdirSync(join(pageFolder, 'assets'), { recursive: true });
  writeFileSync(join(pageFolder, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(pageFolder, 'assets/main.js'), 'export {};');
  writeFileSync(join(top, 'secret.js'), 'not for you');
});
beforeEach(async () => {
  const start = await serveMonitor({ api, pageFolder, host: '127.0.0.1', port: 0 });
  if (!start.ok) throw new Error(start.reason);
  server = start.server;
});
afterEach(() => server.close());
afterAll(() => rmSync(top, { recursive: true }));

interface Answer {
  readonly status: number;
  readonly headers: NodeJS.Dict<string | string[]>;
  readonly body: string;
}

/** A request as it stands, without what fetch would tidy up. */
function get(path: string, { method = 'GET', host = new URL(server.url).host } = {}): Promise<Answer> {
  const { promise, resolve, reject } = Promise.withResolvers<Answer>();
  const { hostname, port } = new URL(server.url);
  request({ hostname, port, path, method, headers: { host }, agent: false }, (response) => {
    let body = '';
    response.setEncoding('utf8').on('data', (text) => {
      body += text;
    });
    response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
  })
    .on('error', reject)
    .end();
  return promise;
}

function open(headers: Record<string, string> = {}, path = 'monitor'): WebSocket {
  return new WebSocket(`${server.url.replace('http', 'ws')}${path}`, { headers });
}

/** How an attempt to open a WebSocket ends: 'open', or the status of its refusal. */
function outcome(socket: WebSocket): Promise<number | 'open'> {
  const { promise, resolve } = Promise.withResolvers<number | 'open'>();
  socket.on('open', () => resolve('open'));
  socket.on('unexpected-response', (_request, response) => resolve(response.statusCode ?? 0));
  socket.on('error', () => undefined);
  return promise.finally(() => socket.terminate());
}

const closeCode = (socket: WebSocket) =>
  new Promise<number>((resolve) => {
    socket.on('error', () => undefined);
    socket.on('close', resolve);
  });

describe('the page', () => {
  it('comes with its policy, and so does what is not there', async () => {
    for (const [path, status] of [
      ['/', 200],
      ['/assets/main.js', 200],
      ['/nothing', 404],
    ] as const) {
      const { headers, ...answer } = await get(path);
      expect(answer.status).toBe(status);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self';");
      expect(policy).toContain("frame-ancestors 'none'");
    }
  });

  it('never allows a script that stands inside the page', async () => {
    const policy = String((await get('/')).headers['content-security-policy']);
    const scripts = policy.split('; ').filter((rule) => /^(script|default)-src/.test(rule));
    expect(scripts.join()).not.toMatch(/unsafe|\*|data:|http/);
  });

  it.each([
    '/../secret.js',
    '/%2e%2e/secret.js',
    '/..%2fsecret.js',
    '/assets/../../secret.js',
    '/%00',
    '/%E0%A4%A',
  ])('gives nothing outside its folder: %s', async (path) => {
    const { status, body } = await get(path);
    expect(status).toBe(404);
    expect(body).not.toContain('not for you');
  });

  it('answers to no name but those of this machine, and to no method but reading', async () => {
    expect((await get('/', { host: 'rebound.example' })).status).toBe(421);
    expect((await get('/', { method: 'POST' })).status).toBe(405);
  });

  it('is found anew when it was built again', async () => {
    writeFileSync(join(pageFolder, 'late.html'), 'late');
    expect((await get('/late.html')).body).toBe('late');
  });
});

describe('the door', () => {
  it('answers calls and hands events on', async () => {
    const socket = open({ origin: server.url.slice(0, -1) });
    const heard: unknown[] = [];
    socket.on('message', (data) => heard.push(JSON.parse(data.toString())));
    await new Promise((resolve) => socket.on('open', resolve));
    socket.send(JSON.stringify({ id: 1, method: 'sites', params: {} }));
    await vi.waitFor(() => expect(heard).toEqual([{ id: 1, ok: true, result: ['sites'] }]), 10_000);
    const event: MonitorEvent = {
      kind: 'host',
      host: { brokerConnected: true, brokerUrl: 'mqtt://127.0.0.1', problems: [] },
    };
    for (const listener of listeners) listener(event);
    await vi.waitFor(() => expect(heard).toContainEqual({ event }), 10_000);
    socket.close();
    await vi.waitFor(() => expect(listeners.size).toBe(0), 10_000);
  });

  it.each([
    ['the page itself', {}, 'monitor', 'open'],
    ['a foreign page', { origin: 'http://rebound.example' }, 'monitor', 403],
    ['a page on another port', { origin: 'http://127.0.0.1:1' }, 'monitor', 403],
    ['a foreign name', { host: 'rebound.example', origin: 'http://rebound.example' }, 'monitor', 421],
    ['another path', {}, 'elsewhere', 404],
  ] as const)('opens or not for %s', async (_who, headers, path, ending) => {
    expect(await outcome(open({ ...headers }, path))).toBe(ending);
  });

  it('answers in words what is no call', async () => {
    const socket = open();
    await new Promise((resolve) => socket.on('open', resolve));
    const heard = new Promise((resolve) =>
      socket.on('message', (data) => resolve(JSON.parse(data.toString()))),
    );
    socket.send('{');
    expect(await heard).toMatchObject({ id: -1, ok: false, problem: { severity: 'error' } });
    socket.terminate();
  });

  it('closes on a message too long and on bytes that are no text', async () => {
    for (const [message, code] of [
      ['x'.repeat(70_000), 1009],
      [Buffer.from([1, 2, 3]), 1003],
    ] as const) {
      const socket = open();
      const closed = closeCode(socket);
      await new Promise((resolve) => socket.on('open', resolve));
      socket.send(message);
      expect(await closed).toBe(code);
    }
  });

  it('closes on a client that calls faster than a person could', async () => {
    const socket = open();
    const closed = closeCode(socket);
    const told = vi.fn();
    await new Promise((resolve) => socket.on('open', resolve));
    socket.on('message', told);
    for (let id = 0; id <= mostCalls; id++) {
      socket.send(JSON.stringify({ id, method: 'sites', params: {} }));
      // One after another, so that it is the number of calls that closes the door, not how many wait.
      if (id < mostCalls) await vi.waitFor(() => expect(told).toHaveBeenCalledTimes(id + 1), { interval: 1 });
    }
    expect(await closed).toBe(1008);
    expect(told).toHaveBeenCalledTimes(mostCalls);
  });

  it('closes on a client that piles up calls', async () => {
    const never = { ...api, call: () => new Promise<never>(() => undefined) };
    const start = await serveMonitor({ api: never, pageFolder, host: '127.0.0.1', port: 0 });
    if (!start.ok) throw new Error(start.reason);
    const socket = new WebSocket(`${start.server.url.replace('http', 'ws')}monitor`);
    const closed = closeCode(socket);
    await new Promise((resolve) => socket.on('open', resolve));
    for (let id = 0; id < 100; id++) socket.send(JSON.stringify({ id, method: 'sites', params: {} }));
    expect(await closed).toBe(1008);
    await start.server.close();
  });
});

describe('serveMonitor', () => {
  it('opens only to this machine', async () => {
    for (const host of ['0.0.0.0', '::', '192.168.1.20', 'example.org'])
      expect(await serveMonitor({ api, pageFolder, host, port: 0 })).toEqual({
        ok: false,
        reason: expect.stringContaining('--token-file'),
      });
  });

  it('takes further names only with tokens, even on this machine', async () => {
    const alsoCalled = ['heater.example'];
    expect(await serveMonitor({ api, pageFolder, host: '127.0.0.1', port: 0, alsoCalled })).toEqual({
      ok: false,
      reason: expect.stringContaining('--token-file'),
    });
  });

  it('says what to do when the page is not built', async () => {
    const start = await serveMonitor({ api, pageFolder: join(top, 'empty'), host: '127.0.0.1', port: 0 });
    expect(start).toEqual({ ok: false, reason: expect.stringContaining('npm run build') });
  });

  it('says that its port is taken', async () => {
    const holder = createServer();
    await new Promise<void>((resolve) => holder.listen(0, '127.0.0.1', resolve));
    const { port } = holder.address() as AddressInfo;
    expect(await serveMonitor({ api, pageFolder, host: '127.0.0.1', port })).toEqual({
      ok: false,
      reason: expect.stringContaining(`port ${port} is taken`),
    });
    await new Promise((resolve) => holder.close(resolve));
  });

  it('serves the other loopback addresses too', async () => {
    const start = await serveMonitor({ api, pageFolder, host: 'localhost', port: 0 });
    if (!start.ok) throw new Error(start.reason);
    expect((await fetch(start.server.url)).status).toBe(200);
    await start.server.close();
  });
});
