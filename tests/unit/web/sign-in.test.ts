import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import { mostFailures, sourceOf } from '../../../desktop/web/failure-limit.ts';
import { mostFormBytes } from '../../../desktop/web/read-form.ts';
import { serveMonitor, type WebServer } from '../../../desktop/web/server.ts';
import { createSessions } from '../../../desktop/web/sessions.ts';
import type { MonitorApi } from '../../../shared-types/monitor-api.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const folder = temporaryFolder('sign-in');
const tokens = { ask: 'ask-token-ask-token-ask-token', look: 'look-token-look-token-look' };
const called = vi.fn();
const api: MonitorApi = {
  async call(method) {
    called(method);
    return { ok: true, result: [method] } as never;
  },
  listen: () => () => undefined,
};
let server: WebServer;
let port: number;
const sockets = new Set<WebSocket>();

beforeAll(() => {
  mkdirSync(folder.file('web'));
  writeFileSync(folder.file('web/index.html'), '<!doctype html><title>page</title>');
});
afterAll(() => folder.remove());
beforeEach(async () => {
  called.mockReset();
  // Every address of this machine: clients come from several of its loopback addresses.
  const start = await serveMonitor({ api, pageFolder: folder.file('web'), host: '0.0.0.0', port: 0, tokens });
  if (!start.ok) throw new Error(start.reason);
  server = start.server;
  port = Number(new URL(server.url).port);
});
afterEach(async () => {
  for (const socket of sockets) socket.terminate();
  sockets.clear();
  await server.close();
});

interface Asking {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
  /** Address that the client comes from. */
  readonly from?: string;
}
interface Answer {
  readonly status: number;
  readonly headers: NodeJS.Dict<string | string[]>;
  readonly body: string;
}
const own = () => `http://127.0.0.1:${port}`;

function ask(
  path: string,
  { method = 'GET', headers = {}, body, from = '127.0.0.1' }: Asking = {},
): Promise<Answer> {
  const { promise, resolve, reject } = Promise.withResolvers<Answer>();
  const options = { host: '127.0.0.1', port, path, method, headers, localAddress: from, agent: false };
  const sent = request(options, (response) => {
    let text = '';
    response.setEncoding('utf8').on('data', (chunk) => {
      text += chunk;
    });
    response.on('end', () =>
      resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }),
    );
  });
  sent.on('error', reject);
  sent.end(body);
  return promise;
}

const form = { 'content-type': 'application/x-www-form-urlencoded' };
const post = (path: string, body: string, more: Asking = {}) =>
  ask(path, { method: 'POST', body, ...more, headers: { origin: own(), ...form, ...more.headers } });
const signIn = (token: string, more: Asking = {}) =>
  post('/sign-in', new URLSearchParams({ token }).toString(), more);
const cookieOf = ({ headers }: Answer) => headers['set-cookie']?.[0]?.split(';')[0] ?? '';

/** How an attempt to open the door ends: its socket, or the status of its refusal. */
function enter(cookie = '', headers: Record<string, string> = {}): Promise<WebSocket | number> {
  const socket = new WebSocket(`ws://127.0.0.1:${port}/monitor`, {
    headers: { origin: own(), ...(cookie === '' ? {} : { cookie }), ...headers },
  });
  sockets.add(socket);
  return new Promise((resolve) => {
    socket.on('open', () => resolve(socket));
    socket.on('unexpected-response', (_request, response) => resolve(response.statusCode ?? 0));
    socket.on('error', () => undefined);
  });
}
async function entered(cookie: string): Promise<WebSocket> {
  const socket = await enter(cookie);
  if (typeof socket === 'number') throw new Error(`refused: ${socket}`);
  return socket;
}
function replyTo(socket: WebSocket, call: unknown): Promise<unknown> {
  socket.send(JSON.stringify(call));
  return new Promise((resolve) => socket.once('message', (data) => resolve(JSON.parse(data.toString()))));
}
const rest = { id: 1, method: 'request', params: { site: 'a', operation: { kind: 'rest', minutes: 5 } } };

describe('beyond this machine', () => {
  it('the page comes to everybody, the door opens to nobody without a token', async () => {
    expect((await ask('/')).status).toBe(200);
    expect(await enter()).toBe(401);
    expect(JSON.parse((await ask('/access')).body)).toEqual({ wantsToken: true, may: 'nothing' });
  });

  it.each(['flatwater=x', `flatwater-1=${tokens.ask}`, '; ; =', 'x'.repeat(4000)])(
    'a made-up cookie opens nothing',
    async (cookie) => {
      expect(await enter(cookie)).toBe(401);
      expect(await enter(`flatwater-${port}=${tokens.ask}; ${cookie}`)).toBe(401);
    },
  );

  it('a foreign name is not answered, whatever it asks', async () => {
    const headers = { host: 'rebound.example', origin: 'http://rebound.example' };
    expect((await ask('/', { headers })).status).toBe(421);
    expect((await ask('/access', { headers })).status).toBe(421);
    expect((await signIn(tokens.ask, { headers })).status).toBe(421);
    expect(await enter('', headers)).toBe(421);
  });
});

describe('signing in', () => {
  it('gives a cookie that scripts and other sites cannot use, and no token', async () => {
    const answer = await signIn(tokens.ask);
    expect(answer.status).toBe(204);
    const [cookie = ''] = answer.headers['set-cookie'] ?? [];
    for (const part of ['HttpOnly', 'SameSite=Strict', 'Path=/', 'Max-Age=604800'])
      expect(cookie.split('; ')).toContain(part);
    expect(cookie).toMatch(new RegExp(`^flatwater-${port}=[\\w-]{43};`));
    expect(cookie).not.toContain(tokens.ask);
    // Without encryption a browser would not send a secure one.
    expect(cookie).not.toContain('Secure');
    expect(answer.headers['cache-control']).toBe('no-store');
  });

  it.each(['ask', 'look'] as const)('with the token to %s opens the door', async (holder) => {
    const cookie = cookieOf(await signIn(tokens[holder]));
    expect(JSON.parse((await ask('/access', { headers: { cookie } })).body)).toEqual({
      wantsToken: true,
      may: holder,
    });
    const socket = await entered(`other=1; ${cookie}`);
    expect(await replyTo(socket, { id: 7, method: 'days', params: { site: 'a' } })).toMatchObject({
      ok: true,
    });
  });

  it('may make requests or only look, as the token says; the refusal is the server’s', async () => {
    const asker = await entered(cookieOf(await signIn(tokens.ask)));
    expect(await replyTo(asker, rest)).toMatchObject({ ok: true });
    expect(called).toHaveBeenCalledWith('request');
    called.mockReset();
    const looker = await entered(cookieOf(await signIn(tokens.look)));
    expect(await replyTo(looker, rest)).toEqual({
      id: 1,
      ok: false,
      problem: { severity: 'error', text: expect.stringContaining('look only'), tip: expect.any(String) },
    });
    expect(called).not.toHaveBeenCalled();
  });

  it.each([
    ['a wrong token', 'token=wrong', {}, 401],
    ['no token', '', {}, 401],
    ['the token as another field', `key=${tokens.ask}`, {}, 401],
    ['JSON', JSON.stringify({ token: tokens.ask }), { 'content-type': 'application/json' }, 415],
    ['text', `token=${tokens.ask}`, { 'content-type': 'text/plain' }, 415],
    ['a long form', `token=${'x'.repeat(mostFormBytes)}`, {}, 413],
    ['a foreign page', `token=${tokens.ask}`, { origin: 'http://rebound.example' }, 403],
    ['a sandboxed page', `token=${tokens.ask}`, { origin: 'null' }, 403],
  ])('with %s is refused', async (_what, body, headers, status) => {
    const answer = await post('/sign-in', body, { headers });
    expect(answer.status).toBe(status);
    expect(answer.headers['set-cookie']).toBeUndefined();
    expect(answer.body).toBe('');
  });

  it('reads a form up to its bound', async () => {
    const fill = 'x'.repeat(mostFormBytes - `token=${tokens.ask}&fill=`.length);
    expect((await post('/sign-in', `token=${tokens.ask}&fill=${fill}`)).status).toBe(204);
    expect((await post('/sign-in', `token=${tokens.ask}&fill=${fill}x`)).status).toBe(413);
  });

  it('without an origin is refused, and so is a token in the address', async () => {
    const bare = await ask('/sign-in', { method: 'POST', headers: form, body: `token=${tokens.ask}` });
    expect(bare.status).toBe(403);
    expect((await ask(`/sign-in?token=${tokens.ask}`)).status).toBe(405);
    expect(await enter('', {})).toBe(401);
    expect((await post(`/sign-in?token=${tokens.ask}`, '')).status).toBe(401);
  });

  it('anew ends the session before', async () => {
    const first = cookieOf(await signIn(tokens.ask));
    const second = cookieOf(await signIn(tokens.look, { headers: { cookie: first } }));
    expect(await enter(first)).toBe(401);
    expect(await enter(second)).toBeInstanceOf(WebSocket);
  });
});

describe('wrong tokens', () => {
  it('close the way in for their address, the right token included, and for no other', async () => {
    const from = '127.0.0.3';
    for (let failure = 0; failure < mostFailures; failure++)
      expect((await signIn('wrong', { from })).status).toBe(401);
    const answer = await signIn(tokens.ask, { from });
    expect(answer.status).toBe(429);
    expect(Number(answer.headers['retry-after'])).toBeGreaterThan(800);
    expect(Number(answer.headers['retry-after'])).toBeLessThanOrEqual(900);
    expect((await signIn(tokens.ask, { from: '127.0.0.2' })).status).toBe(204);
  });

  it('get no more tries when they come all at once', async () => {
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => signIn('wrong', { from: '127.0.0.3' })),
    );
    expect(answers.filter(({ status }) => status === 401)).toHaveLength(mostFailures);
  });

  it('are forgotten after a right one', async () => {
    for (let round = 0; round < 3; round++) {
      for (let failure = 1; failure < mostFailures; failure++)
        expect((await signIn('wrong', { from: '127.0.0.3' })).status).toBe(401);
      expect((await signIn(tokens.ask, { from: '127.0.0.3' })).status).toBe(204);
    }
  });

  it('of one visitor of a proxy on this machine lock out no other', async () => {
    for (let failure = 0; failure < 2 * mostFailures; failure++)
      expect((await signIn('wrong')).status).toBe(401);
    expect((await signIn(tokens.ask)).status).toBe(204);
  });

  it.each([
    ['127.0.0.1', '127.0.0.1'],
    ['::ffff:127.0.0.1', '127.0.0.1'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2'],
    ['2001:db8:1:2::6', '2001:db8:1:2'],
    ['2001:db8::6', '2001:db8:0:0'],
    ['2001:0db8::', '2001:db8:0:0'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    ['::1', '0:0:0:0'],
  ])('from %s count for %s', (address, source) => {
    expect(sourceOf(address)).toBe(source);
  });
});

describe('signing out', () => {
  it('takes the cookie back, ends the session and closes its doors, those of others not', async () => {
    const cookie = cookieOf(await signIn(tokens.ask));
    const other = await entered(cookieOf(await signIn(tokens.ask)));
    const socket = await entered(cookie);
    const closed = new Promise((resolve) => socket.on('close', resolve));
    const answer = await post('/sign-out', '', { headers: { cookie } });
    expect(answer.status).toBe(204);
    expect(answer.headers['set-cookie']?.[0]).toMatch(new RegExp(`^flatwater-${port}=; .*Max-Age=0`));
    expect(await closed).toBe(1008);
    expect(await enter(cookie)).toBe(401);
    expect(await replyTo(other, rest)).toMatchObject({ ok: true });
  });

  it('hears nothing more of a client that ignores it', async () => {
    const cookie = cookieOf(await signIn(tokens.ask));
    const socket = await entered(cookie);
    // It reads nothing, so that it never learns of the end.
    socket.pause();
    await post('/sign-out', '', { headers: { cookie } });
    socket.send(JSON.stringify(rest));
    // A second client's call is answered after: by then the first one's would have been, too.
    const witness = await entered(cookieOf(await signIn(tokens.ask)));
    for (let id = 0; id < 5; id++) await replyTo(witness, { id, method: 'sites', params: {} });
    expect(called).not.toHaveBeenCalledWith('request');
  });

  it('is not done by a foreign page', async () => {
    const cookie = cookieOf(await signIn(tokens.ask));
    const headers = { cookie, origin: 'http://rebound.example' };
    expect((await post('/sign-out', '', { headers })).status).toBe(403);
    expect((await ask('/sign-out', { headers: { cookie } })).status).toBe(405);
    expect(await enter(cookie)).toBeInstanceOf(WebSocket);
  });
});

describe('sessions', () => {
  it('end by themselves, and the oldest when there are too many', () => {
    vi.useFakeTimers();
    const sessions = createSessions(1000, 2);
    const first = sessions.begin('ask');
    const second = sessions.begin('look');
    expect(sessions.find(first.id)).toBe(first);
    const third = sessions.begin('look');
    expect(sessions.find(first.id)).toBeUndefined();
    expect(first.ended.aborted).toBe(true);
    vi.advanceTimersByTime(999);
    expect([second, third].map(({ ended }) => ended.aborted)).toEqual([false, false]);
    vi.advanceTimersByTime(1);
    expect([second, third].map(({ ended }) => ended.aborted)).toEqual([true, true]);
    expect(sessions.find(second.id)).toBeUndefined();
    vi.useRealTimers();
  });
});

it('behind a proxy on this machine, a page signs in and enters under the proxy’s name, and no other', async () => {
  await server.close();
  const start = await serveMonitor({
    ...{ api, pageFolder: folder.file('web'), host: '127.0.0.1', port: 0, tokens },
    alsoCalled: ['heater.example'],
  });
  if (!start.ok) throw new Error(start.reason);
  server = start.server;
  port = Number(new URL(server.url).port);
  const headers = { host: 'heater.example', origin: 'https://heater.example' };
  const answer = await signIn(tokens.ask, { headers });
  expect(answer.status).toBe(204);
  expect(answer.headers['set-cookie']?.[0]).toMatch(/; Secure$/);
  expect(await enter(cookieOf(answer), headers)).toBeInstanceOf(WebSocket);
  expect((await ask('/', { headers: { host: 'rebound.example' } })).status).toBe(421);
});

it('on this machine alone, nobody is asked for a token, and none is taken', async () => {
  const start = await serveMonitor({ api, pageFolder: folder.file('web'), host: '127.0.0.1', port: 0 });
  if (!start.ok) throw new Error(start.reason);
  const access = await fetch(`${start.server.url}access`);
  expect(await access.json()).toEqual({ wantsToken: false, may: 'ask' });
  const answer = await fetch(`${start.server.url}sign-in`, {
    method: 'POST',
    body: new URLSearchParams({ token: '' }),
    headers: { origin: start.server.url.slice(0, -1) },
  });
  expect(answer.status).toBe(401);
  await start.server.close();
});
