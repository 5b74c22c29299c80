import { describe, expect, test } from 'vitest';
import { bannersOf } from '../../../desktop/ui/shell/banners.ts';
import { emptyLive, type LiveState } from '../../../desktop/ui/store/live-store.ts';
import { en } from '../../../desktop/ui/text/en.ts';
import type { SiteLive } from '../../../shared-types/monitor-api.ts';
import { testSite } from '../../support/fake-monitor/site.ts';
import { testLive, testSnapshot } from '../../support/fake-monitor/snapshot.ts';

const url = 'mqtt://127.0.0.1:1883';
const host = { brokerConnected: true, brokerUrl: url, problems: [] };

const state = (live: SiteLive | undefined, change: Partial<LiveState> = {}): LiveState => ({
  ...emptyLive,
  door: 'open',
  host,
  told: true,
  nowMs: 1000,
  sites: live === undefined ? {} : { [testSite]: { live, heardAtMs: 1000 } },
  ...change,
});
const texts = (of: LiveState) => bannersOf(of).map((problem) => problem.text);
const { banners } = en;

describe('on top of the screen stands', () => {
  test('nothing when all is well', () => {
    expect(texts(state(testLive()))).toEqual([]);
  });
  test('that the monitor is gone, and nothing that it said of others', () => {
    const down = state(testLive({ status: { schema: 1, state: 'lost' } }), { door: 'down' });
    expect(texts(down)).toEqual([banners.doorDown]);
  });
  test('that the broker is gone, with its address', () => {
    expect(texts(state(testLive(), { host: { ...host, brokerConnected: false } }))).toEqual([
      banners.brokerGone(url),
    ]);
  });
  test('that no controller was heard, once the monitor has told all it knows', () => {
    expect(texts(state(undefined))).toEqual([banners.noSite(url)]);
    expect(texts(state(undefined, { told: false }))).toEqual([]);
  });
  test.each([
    ['lost', banners.controllerLost],
    ['stopped', banners.controllerStopped],
  ] as const)('that the controller is %s', (status, text) => {
    expect(texts(state(testLive({ status: { schema: 1, state: status } })))).toContain(text);
  });
  test.each([
    [5000, null],
    [5001, banners.clockAhead('10\u00a0s')],
    [-5001, banners.clockBehind('10\u00a0s')],
    [-180_000, banners.clockBehind('3\u00a0min')],
    [59_000, banners.clockAhead('1\u00a0min')],
    [null, null],
  ])('by how much the two clocks are apart, at %s ms', (clockAheadMs, text) => {
    expect(texts(state(testLive({ clockAheadMs })))).toEqual(text === null ? [] : [text]);
  });
  test('that nothing is heard of the chosen site, and nothing of another one', () => {
    const lost = testLive({ status: { schema: 1, state: 'lost' } });
    expect(texts(state(lost, { chosen: 'elsewhere' }))).toEqual([banners.siteUnheard('elsewhere')]);
    expect(texts(state(lost, { chosen: 'elsewhere', told: false }))).toEqual([]);
    expect(texts(state(testLive(), { chosen: testSite }))).toEqual([]);
  });
  test('how old the values are, in steps of ten seconds', () => {
    const old = (nowMs: number) => texts(state(testLive(), { nowMs }));
    expect(old(1000 + 15_000)).toEqual([]);
    expect(old(1000 + 27_000)).toEqual([banners.snapshotOld('20\u00a0s')]);
    expect(old(1000 + 200_000)).toEqual([banners.snapshotOld('3\u00a0min')]);
  });
  test('an age that the monitor counted before this page was there', () => {
    expect(texts(state(testLive({ snapshotAgeMs: 7_200_000 })))).toEqual([
      banners.snapshotOld('2\u00a0h 00\u00a0min'),
    ]);
  });
  test('that device or log cannot be reached', () => {
    const snapshot = testSnapshot();
    const live = testLive({
      snapshot: {
        ...snapshot,
        link: { ...snapshot.link, connected: false },
        log: { writable: false, remark: 'disk full' },
      },
    });
    expect(texts(state(live))).toEqual([banners.linkDown, banners.logNotWritable('disk full')]);
  });
  test('what the monitor itself finds amiss', () => {
    const problems = [{ severity: 'warning' as const, text: 'a message could not be understood' }];
    expect(texts(state(testLive(), { host: { ...host, problems } }))).toEqual([problems[0]?.text]);
  });
  test('that a simulated clock runs fast', () => {
    const live = testLive({ snapshot: { ...testSnapshot(), clockSpeed: 60 } });
    expect(texts(state(live))).toEqual([banners.clockFast('60')]);
    const slow = testLive({ snapshot: { ...testSnapshot(), simulatedClock: true } });
    expect(texts(state(slow))).toEqual([banners.clockOwn]);
  });
});
