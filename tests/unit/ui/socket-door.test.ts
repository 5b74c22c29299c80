import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { openDoor } from '../../../desktop/ui/door.ts';
import { openSocketDoor, type Socket } from '../../../desktop/ui/socket-door.ts';
import { bannerText } from '../../../desktop/ui/text/shell.ts';
import type { MonitorApi, MonitorEvent } from '../../../shared-types/monitor-api.ts';

/** A socket whose other end is the test. */
class FakeSocket implements Socket {
  readonly sent: { id: number; method: string; params: unknown }[] = [];
  private readonly listeners = new Map<string, ((event: { data: unknown }) => void)[]>();
  send(text: string) {
    this.sent.push(JSON.parse(text));
  }
  close() {
    this.happen('close');
  }
  addEventListener(kind: string, listener: (event: { data: unknown }) => void) {
    this.listeners.set(kind, [...(this.listeners.get(kind) ?? []), listener]);
  }
  happen(kind: string, data: unknown = '') {
    for (const listener of this.listeners.get(kind) ?? []) listener({ data });
  }
  hear(wire: unknown) {
    this.happen('message', JSON.stringify(wire));
  }
}

const host = { brokerConnected: true, brokerUrl: 'mqtt://127.0.0.1:1883', problems: [] };

let sockets: FakeSocket[];
const newest = () => sockets.at(-1) as FakeSocket;
const open = () =>
  openSocketDoor({
    connect() {
      sockets.push(new FakeSocket());
      return newest();
    },
    replyTimeoutMs: 5000,
    firstPauseMs: 100,
    longestPauseMs: 400,
  });

beforeEach(() => {
  sockets = [];
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a call', () => {
  test('gets the reply that carries its id, whatever the order', async () => {
    const door = open();
    newest().happen('open');
    const first = door.call('hostState', {});
    const second = door.call('days', { site: 'a' });
    const [one, two] = newest().sent;
    newest().hear({ id: two?.id, ok: true, result: [] });
    newest().hear({ id: one?.id, ok: true, result: host });
    expect(await first).toEqual({ ok: true, result: host });
    expect(await second).toEqual({ ok: true, result: [] });
    expect(two).toMatchObject({ method: 'days', params: { site: 'a' } });
  });
  test('hands on a problem of the host', async () => {
    const door = open();
    newest().happen('open');
    const call = door.call('hostState', {});
    const problem = { severity: 'error', text: 'no such site' };
    newest().hear({ id: newest().sent[0]?.id, ok: false, problem });
    expect(await call).toEqual({ ok: false, problem });
  });
  test('fails in words when its result is not what was promised', async () => {
    const door = open();
    newest().happen('open');
    const call = door.call('hostState', {});
    newest().hear({ id: newest().sent[0]?.id, ok: true, result: { brokerConnected: 'yes' } });
    expect(await call).toMatchObject({ ok: false, problem: { severity: 'error' } });
  });
  test('fails at once and sends nothing while the door is not open', async () => {
    const door = open();
    expect(await door.call('hostState', {})).toMatchObject({
      ok: false,
      problem: { text: bannerText.doorDown },
    });
    expect(newest().sent).toEqual([]);
  });
  test('fails when the connection is lost before the reply', async () => {
    const door = open();
    newest().happen('open');
    const call = door.call('hostState', {});
    newest().happen('close');
    expect((await call).ok).toBe(false);
  });
  test('fails when no reply comes, and a late one does no harm', async () => {
    const door = open();
    newest().happen('open');
    const call = door.call('hostState', {});
    vi.advanceTimersByTime(5000);
    expect((await call).ok).toBe(false);
    expect(() => newest().hear({ id: newest().sent[0]?.id, ok: true, result: host })).not.toThrow();
  });
});

describe('events', () => {
  test('reach every listener until it stops', () => {
    const door = open();
    const heard: MonitorEvent[] = [];
    const stop = door.listen((event) => heard.push(event));
    newest().happen('open');
    const event = { kind: 'host', host };
    newest().hear({ event });
    expect(heard).toEqual([event]);
    stop();
    newest().hear({ event });
    expect(heard).toHaveLength(1);
  });
  test.each(['', 'not json', '[]', '{"event":{"kind":"host"}}', '{"event":{"kind":"other"}}'])(
    'that make no sense are dropped: %s',
    (text) => {
      const door = open();
      const heard: MonitorEvent[] = [];
      door.listen((event) => heard.push(event));
      newest().happen('open');
      newest().happen('message', text);
      expect(heard).toEqual([]);
    },
  );
});

describe('a lost connection', () => {
  test('is tried again after pauses that double up to a limit, and start small again once it was open', () => {
    const door = open();
    const states: string[] = [];
    door.watch((state) => states.push(state));
    for (const pauseMs of [100, 200, 400, 400]) {
      newest().happen('close');
      const before = sockets.length;
      vi.advanceTimersByTime(pauseMs - 1);
      expect(sockets).toHaveLength(before);
      vi.advanceTimersByTime(1);
      expect(sockets).toHaveLength(before + 1);
    }
    newest().happen('open');
    newest().happen('close');
    const before = sockets.length;
    vi.advanceTimersByTime(100);
    expect(sockets).toHaveLength(before + 1);
    expect(states).toEqual(['down', 'open', 'down']);
  });
  test('is not tried again once the door was closed', () => {
    const door = open();
    door.close();
    vi.advanceTimersByTime(60_000);
    expect(sockets).toHaveLength(1);
  });
});

test('a window’s own way to the host is used as it is', async () => {
  const api = {
    call: async () => ({ ok: true, result: host }),
    listen: () => () => undefined,
  } as unknown as MonitorApi;
  const door = openDoor({ flatwater: api, location: { protocol: 'app:', host: 'monitor' } });
  expect(door.state()).toBe('open');
  expect(await door.call('hostState', {})).toEqual({ ok: true, result: host });
});
