import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { openDoor } from '../../../desktop/ui/door.ts';
import { createGate } from '../../../desktop/ui/gate.ts';
import { bannersOf } from '../../../desktop/ui/shell/banners.ts';
import { openSocketDoor, type Socket } from '../../../desktop/ui/socket-door.ts';
import { startFeed } from '../../../desktop/ui/store/feed.ts';
import { selectListening, selectLookOnly } from '../../../desktop/ui/store/live-selectors.ts';
import { emptyLive, useLive } from '../../../desktop/ui/store/live-store.ts';
import { en } from '../../../desktop/ui/text/en.ts';
import type { Access } from '../../../shared-types/monitor-access.ts';
import { testSite } from '../../support/fake-monitor/site.ts';
import { testLive } from '../../support/fake-monitor/snapshot.ts';

/** A server that answers once with each of these, then not at all. */
function server(...answers: (Response | undefined)[]) {
  const asked: [string, RequestInit | undefined][] = [];
  const send = (async (path: string, init?: RequestInit) => {
    asked.push([path, init]);
    const answer = answers.shift();
    if (answer === undefined) throw new TypeError('no answer');
    return answer;
  }) as typeof fetch;
  return { asked, gate: createGate(send) };
}
const told = (body: unknown) => new Response(JSON.stringify(body));

describe('the gate', () => {
  test('keeps what the server last said', async () => {
    const looks = { wantsToken: true, may: 'look' };
    const { gate } = server(told(looks), undefined, told({ may: 'rule' }), new Response('<!doctype'));
    expect(gate.latest()).toEqual({ wantsToken: false, may: 'ask' });
    expect(await gate.refresh()).toEqual(looks);
    for (let turn = 0; turn < 3; turn++) expect(await gate.refresh()).toBeUndefined();
    expect(gate.latest()).toEqual(looks);
  });

  test('carries the token in a form, never in the address', async () => {
    const { asked, gate } = server(new Response(null, { status: 204 }));
    expect(await gate.signIn('a&b=c')).toEqual({ kind: 'in' });
    const [path, init] = asked[0] ?? [];
    expect(path).toBe('/sign-in');
    expect(init?.method).toBe('POST');
    expect(String(init?.body)).toBe('token=a%26b%3Dc');
  });

  test.each([
    [401, {}, { kind: 'wrong' }],
    [413, {}, { kind: 'wrong' }],
    [429, { 'Retry-After': '840' }, { kind: 'wait', waitS: 840 }],
  ])('reads the refusal %i', async (status, headers, outcome) => {
    const { gate } = server(new Response(null, { status, headers }));
    expect(await gate.signIn('x')).toEqual(outcome);
  });

  test('says that nobody answers, and signs out all the same', async () => {
    const { gate, asked } = server();
    expect(await gate.signIn('x')).toEqual({ kind: 'unreachable' });
    await gate.signOut();
    expect(asked[1]).toEqual(['/sign-out', { method: 'POST' }]);
  });
});

class QuietSocket implements Socket {
  private readonly opened: (() => void)[] = [];
  send() {
    return undefined;
  }
  close() {
    return undefined;
  }
  addEventListener(kind: string, listener: (event: never) => void) {
    if (kind === 'open') this.opened.push(listener as () => void);
  }
  open() {
    for (const listener of this.opened) listener();
  }
}

describe('a door that asks first', () => {
  const sockets: QuietSocket[] = [];
  let may: Access['may'] | undefined;
  const knocking = () =>
    openSocketDoor({
      connect() {
        const socket = new QuietSocket();
        sockets.push(socket);
        return socket;
      },
      access: async () => (may === undefined ? undefined : { wantsToken: true, may }),
      firstPauseMs: 100,
      longestPauseMs: 400,
    });
  const settled = () => vi.advanceTimersByTimeAsync(0);
  beforeEach(() => {
    sockets.length = 0;
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('stays shut, without knocking again, until somebody signed in', async () => {
    may = 'nothing';
    const door = knocking();
    await settled();
    expect(door.state()).toBe('shut');
    await vi.advanceTimersByTimeAsync(60_000);
    expect(sockets).toHaveLength(0);
    may = 'look';
    door.knockAgain();
    await settled();
    expect(sockets).toHaveLength(1);
    sockets[0]?.open();
    expect(door.state()).toBe('open');
    door.knockAgain();
    await settled();
    expect(sockets).toHaveLength(1);
  });

  test('tries again while nobody answers', async () => {
    may = undefined;
    const door = knocking();
    await settled();
    expect(door.state()).toBe('down');
    may = 'ask';
    await vi.advanceTimersByTimeAsync(99);
    expect(sockets).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(1);
    expect(sockets).toHaveLength(1);
  });

  test('does not open once it is closed', async () => {
    may = 'ask';
    const door = knocking();
    door.close();
    await settled();
    expect(sockets).toHaveLength(0);
  });
});

describe('the screens of somebody who signed in', () => {
  const host = { brokerConnected: true, brokerUrl: 'mqtt://127.0.0.1:1883', problems: [] };
  const sites = { [testSite]: { live: testLive(), heardAtMs: 0 } };
  const state = (may: Access['may'], door: 'open' | 'shut' = 'open') => ({
    ...emptyLive,
    ...{ door, host, sites, told: true, access: { wantsToken: true, may } },
  });

  test('to look only say so and hear no request', () => {
    expect(selectListening(state('ask'))).toBe(true);
    expect(selectListening(state('look'))).toBe(false);
    expect(selectLookOnly(state('ask'))).toBe(false);
    expect(selectLookOnly(state('look'))).toBe(true);
    expect(bannersOf(state('look')).map(({ text }) => text)).toEqual([en.banners.lookOnly]);
    expect(bannersOf(state('ask'))).toEqual([]);
  });

  test('say nothing of a loop while the door is shut', () => {
    expect(bannersOf({ ...state('nothing', 'shut'), host: null })).toEqual([]);
  });

  test('take from the door, each time that it changes, what may be done', () => {
    const looks: Access = { wantsToken: true, may: 'look' };
    let access: Access = { wantsToken: true, may: 'nothing' };
    let turn: (state: 'open' | 'shut') => void = () => undefined;
    const gate = { latest: () => access, signIn: async () => ({ kind: 'wrong' }) as const, signOut: vi.fn() };
    const feed = startFeed(
      {
        call: () => new Promise(() => undefined),
        listen: () => () => undefined,
        watch(watcher) {
          turn = watcher;
          return () => undefined;
        },
        state: () => 'shut',
        close: () => undefined,
        gate,
      },
      () => 0,
    );
    expect(useLive.getState().access).toEqual(access);
    access = looks;
    turn('open');
    expect(useLive.getState().access).toEqual(looks);
    void feed.signOut();
    expect(gate.signOut).toHaveBeenCalledOnce();
    feed.stop();
  });

  test('hand the token on, and need none in a window of our own', async () => {
    const signIn = vi.fn(async () => ({ kind: 'wrong' }) as const);
    const api = { call: async () => ({ ok: true, result: [] }) as never, listen: () => () => undefined };
    const location = { protocol: 'app:', host: 'flatwater' };
    const own = openDoor({ flatwater: api, location });
    expect(own.gate).toBeUndefined();
    const first = startFeed(own, () => 0);
    expect(await first.signIn('x')).toEqual({ kind: 'in' });
    await first.signOut();
    first.stop();
    const second = startFeed(
      { ...own, gate: { latest: () => emptyLive.access, signIn, signOut: async () => undefined } },
      () => 0,
    );
    expect(await second.signIn('x')).toEqual({ kind: 'wrong' });
    expect(signIn).toHaveBeenCalledWith('x');
    second.stop();
  });
});
