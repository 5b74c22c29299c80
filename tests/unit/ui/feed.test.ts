import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Door, DoorState } from '../../../desktop/ui/door.ts';
import { useAnnouncements } from '../../../desktop/ui/store/announcement-store.ts';
import { selectReadingFreshForMs } from '../../../desktop/ui/store/decision-selectors.ts';
import { type Feed, startFeed } from '../../../desktop/ui/store/feed.ts';
import {
  emptyHistory,
  selectDays,
  selectRecent,
  useHistory,
} from '../../../desktop/ui/store/history-store.ts';
import {
  alarmsOf,
  selectAlarms,
  selectLagMs,
  selectListening,
  selectReading,
  selectSiteName,
  selectSiteNames,
  selectSiteTitle,
  selectSnapshotAgeMs,
  selectUnheard,
} from '../../../desktop/ui/store/live-selectors.ts';
import { emptyLive, useLive } from '../../../desktop/ui/store/live-store.ts';
import { selectAskedOf, useAsked } from '../../../desktop/ui/store/request-store.ts';
import type { MonitorEvent, MonitorMethod, SiteLive } from '../../../shared-types/monitor-api.ts';
import { testLive, testSnapshot } from '../../support/fake-monitor/snapshot.ts';
import { frostAlarm as frost } from '../../support/samples.ts';

const host = { brokerConnected: true, brokerUrl: 'mqtt://127.0.0.1:1883', problems: [] };

/** A door that the test opens, and whose replies the test gives. */
function fakeDoor() {
  const calls: { method: MonitorMethod; params: unknown; reply: (value: unknown) => void }[] = [];
  let state: DoorState = 'connecting';
  let tell: (event: MonitorEvent) => void = () => undefined;
  let turn: (state: DoorState) => void = () => undefined;
  const door: Door = {
    call: (method, params) =>
      new Promise((resolve) => {
        calls.push({ method, params, reply: (value) => resolve(value as never) });
      }),
    listen(listener) {
      tell = listener;
      return () => undefined;
    },
    watch(listener) {
      turn = listener;
      return () => undefined;
    },
    state: () => state,
    close: () => undefined,
  };
  return {
    door,
    calls,
    last: (method: MonitorMethod) => calls.findLast((call) => call.method === method),
    tell: (event: MonitorEvent) => tell(event),
    become(next: DoorState) {
      state = next;
      turn(next);
    },
  };
}

let wall: number;
let fake: ReturnType<typeof fakeDoor>;
let feed: Feed;
const live = (of: SiteLive) => fake.tell({ kind: 'live', live: of });
const settled = () => vi.advanceTimersByTimeAsync(0);

beforeEach(() => {
  vi.useFakeTimers();
  useLive.setState(emptyLive);
  useHistory.setState(emptyHistory);
  useAnnouncements.setState({ alert: '' });
  useAsked.setState({ asked: { state: 'none' } });
  wall = 50_000;
  fake = fakeDoor();
  feed = startFeed(fake.door, () => wall);
});
afterEach(() => {
  feed.stop();
  vi.useRealTimers();
});

describe('live', () => {
  test('asks for everything each time that the door opens', async () => {
    fake.become('open');
    fake.last('hostState')?.reply({ ok: true, result: host });
    fake.last('sites')?.reply({ ok: true, result: [testLive()] });
    await settled();
    expect(useLive.getState()).toMatchObject({ door: 'open', host, told: true });
    expect(selectSiteName(useLive.getState())).toBe('test-loop');
    const before = fake.calls.length;
    fake.become('down');
    fake.become('open');
    expect(fake.calls).toHaveLength(before + 2);
  });

  test('grows old when nothing comes', () => {
    live(testLive({ snapshotAgeMs: 4000 }));
    expect(selectSnapshotAgeMs(useLive.getState())).toBe(4000);
    expect(selectLagMs(useLive.getState())).toBe(0);
    wall += 30_000;
    vi.advanceTimersByTime(1000);
    expect(selectSnapshotAgeMs(useLive.getState())).toBe(34_000);
    expect(selectLagMs(useLive.getState())).toBe(34_000);
    live(testLive());
    expect(selectLagMs(useLive.getState())).toBe(0);
  });

  test('shows the first site, then the chosen one, and never another in its place', () => {
    live(testLive({ name: 'b-loop' }));
    live(testLive({ name: 'a-loop' }));
    expect(selectSiteNames(useLive.getState())).toEqual(['a-loop', 'b-loop']);
    expect(selectSiteName(useLive.getState())).toBe('a-loop');
    feed.choose('b-loop');
    expect(selectSiteName(useLive.getState())).toBe('b-loop');
    fake.tell({ kind: 'gone', site: 'b-loop' });
    expect(selectSiteNames(useLive.getState())).toEqual(['a-loop']);
    expect(selectSiteName(useLive.getState())).toBe('b-loop');
    expect(selectSnapshotAgeMs(useLive.getState())).toBeNull();
    expect(selectListening(useLive.getState())).toBe(false);
  });

  test('stays at the site that it showed first when another is heard later', async () => {
    fake.become('open');
    fake.last('hostState')?.reply({ ok: true, result: host });
    fake.last('sites')?.reply({ ok: true, result: [testLive({ name: 'm-loop' })] });
    await settled();
    live(testLive({ name: 'a-loop' }));
    expect(selectSiteName(useLive.getState())).toBe('m-loop');
  });

  test('stays at the first site that comes after the monitor said that there is none', async () => {
    fake.become('open');
    fake.last('sites')?.reply({ ok: true, result: [] });
    fake.last('hostState')?.reply({ ok: true, result: host });
    await settled();
    expect(selectUnheard(useLive.getState())).toBe(false);
    live(testLive({ name: 'm-loop' }));
    live(testLive({ name: 'a-loop' }));
    expect(selectSiteName(useLive.getState())).toBe('m-loop');
  });

  test('forgets sites that went while the door was closed', async () => {
    live(testLive({ name: 'a-loop' }));
    live(testLive({ name: 'b-loop' }));
    fake.become('open');
    fake.last('hostState')?.reply({ ok: true, result: host });
    fake.last('sites')?.reply({ ok: true, result: [testLive({ name: 'b-loop' })] });
    await settled();
    expect(selectSiteNames(useLive.getState())).toEqual(['b-loop']);
  });

  test('knows only what was said of a site that has the name of something else', () => {
    feed.choose('constructor');
    useLive.setState({ told: true });
    const state = useLive.getState();
    expect(selectUnheard(state)).toBe(true);
    expect(selectSiteTitle(state)).toBe('constructor');
    expect(selectAlarms(state)).toEqual([]);
    expect(alarmsOf(state, 'constructor')).toEqual([]);
    expect(selectDays('constructor')(useHistory.getState())).toBeUndefined();
    expect(selectRecent('constructor')(useHistory.getState())).toBeUndefined();
    live(testLive({ name: 'constructor' }));
    expect(selectUnheard(useLive.getState())).toBe(false);
  });

  test('keeps the same list of names as long as they are the same', () => {
    live(testLive());
    const before = selectSiteNames(useLive.getState());
    live(testLive({ snapshot: testSnapshot({ phase: 'resting' }) }));
    expect(selectSiteNames(useLive.getState())).toBe(before);
  });

  test('hears requests only while broker and controller are there', () => {
    live(testLive());
    const listening = () => selectListening(useLive.getState());
    expect(listening()).toBe(false);
    fake.become('open');
    fake.tell({ kind: 'host', host });
    expect(listening()).toBe(true);
    live(testLive({ status: { schema: 1, state: 'lost' } }));
    expect(listening()).toBe(false);
    live(testLive());
    fake.tell({ kind: 'host', host: { ...host, brokerConnected: false } });
    expect(listening()).toBe(false);
  });

  test('gives one reading at a time', () => {
    live(testLive());
    expect(selectReading('panOutletC')(useLive.getState())).toMatchObject({ value: 47.3 });
    expect(selectReading('reservoirC')(useLive.getState())).toBeUndefined();
  });

  test('lets readings be older where the clock runs fast', () => {
    live(testLive());
    expect(selectReadingFreshForMs(useLive.getState())).toBe(20_000);
    live(testLive({ snapshot: { ...testSnapshot(), clockSpeed: 60 } }));
    expect(selectReadingFreshForMs(useLive.getState())).toBe(180_000);
  });
});

describe('alarms', () => {
  test('are announced once', () => {
    live(testLive());
    expect(useAnnouncements.getState().alert).toBe('');
    live(testLive({ snapshot: testSnapshot({ alarms: [frost] }) }));
    expect(useAnnouncements.getState().alert).toBe('New alarm: Frost, and water in the pan');
    useAnnouncements.setState({ alert: '' });
    live(testLive({ snapshot: testSnapshot({ alarms: [frost] }) }));
    expect(useAnnouncements.getState().alert).toBe('');
    expect(selectAlarms(useLive.getState())).toHaveLength(1);
  });
  test('of a site that is not shown are not announced', () => {
    live(testLive({ name: 'a-loop' }));
    live(testLive({ name: 'b-loop', snapshot: testSnapshot({ alarms: [frost] }) }));
    expect(useAnnouncements.getState().alert).toBe('');
  });
});

describe('history', () => {
  const days = selectDays('test-loop');
  test('waits, then has the answer or the problem', async () => {
    void feed.loadDays('test-loop');
    expect(days(useHistory.getState())).toEqual({ state: 'loading' });
    fake.last('days')?.reply({ ok: true, result: [] });
    await settled();
    expect(days(useHistory.getState())).toEqual({ state: 'ready', value: [] });
    const problem = { severity: 'error', text: 'the log cannot be read' };
    void feed.loadDays('test-loop');
    // What is there stays until there is something newer.
    expect(days(useHistory.getState())?.state).toBe('ready');
    fake.last('days')?.reply({ ok: false, problem });
    await settled();
    expect(days(useHistory.getState())).toEqual({ state: 'failed', problem });
  });
  test('drops an answer that a newer question has overtaken', async () => {
    void feed.loadRecent('test-loop', 24);
    const slow = fake.last('recent');
    void feed.loadRecent('test-loop', 3);
    fake.last('recent')?.reply({ ok: true, result: 'three hours' });
    slow?.reply({ ok: true, result: 'a day' });
    await settled();
    expect(selectRecent('test-loop')(useHistory.getState())).toMatchObject({ value: 'three hours' });
  });
  test('keeps a few days only', async () => {
    for (let day = 10; day < 30; day++) {
      void feed.loadDay('test-loop', `2031-06-${day}`);
      fake.last('day')?.reply({ ok: true, result: day });
      await settled();
    }
    const kept = Object.keys(useHistory.getState().curves);
    expect(kept).toHaveLength(8);
    expect(kept).toContain('test-loop/2031-06-29');
    expect(kept).not.toContain('test-loop/2031-06-10');
  });
});

test('a request shows that it is asked, then what came of it', async () => {
  live(testLive());
  void feed.request('test-loop', { kind: 'rest', minutes: 60 });
  expect(useAsked.getState().asked).toEqual({ state: 'asking' });
  expect(selectAskedOf(['rest'])(useAsked.getState())).toEqual({ state: 'asking' });
  expect(selectAskedOf(['empty', 'automatic'])(useAsked.getState())).toEqual({ state: 'none' });
  expect(fake.last('request')?.params).toEqual({
    site: 'test-loop',
    operation: { kind: 'rest', minutes: 60 },
  });
  const answer = { id: 'request-1', accepted: false, code: 'hazard-forbids', text: 'Frost comes first.' };
  fake.last('request')?.reply({ ok: true, result: answer });
  await settled();
  expect(useAsked.getState().asked).toEqual({ state: 'answered', answer });
});

test('what came of a request is told only where it was made', async () => {
  live(testLive({ name: 'a-loop' }));
  live(testLive({ name: 'b-loop' }));
  feed.choose('a-loop');
  void feed.request('a-loop', { kind: 'rest', minutes: 60 });
  const answer = { id: 'request-1', accepted: true, code: 'accepted', text: 'Accepted.' };
  feed.choose('b-loop');
  expect(useAsked.getState().asked).toEqual({ state: 'none' });
  fake.last('request')?.reply({ ok: true, result: answer });
  await settled();
  expect(useAsked.getState().asked).toEqual({ state: 'none' });
  void feed.request('b-loop', { kind: 'automatic' });
  feed.choose('b-loop');
  expect(useAsked.getState().asked).toEqual({ state: 'asking' });
});
