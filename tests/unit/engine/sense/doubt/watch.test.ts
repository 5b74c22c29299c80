import { describe, expect, it } from 'vitest';
import { doubtMs, isDoubted, withDoubts } from '../../../../../controller/engine/sense/doubt/apply.ts';
import { isComparisonName } from '../../../../../controller/engine/sense/doubt/names.ts';
import { scatterAfter } from '../../../../../controller/engine/sense/doubt/scatter.ts';
import { updateWatch } from '../../../../../controller/engine/sense/doubt/watch.ts';
import { dewPointC } from '../../../../../controller/engine/sky.ts';
import {
  type ChannelMemory,
  type Doubt,
  unwatched,
  type WatchMemory,
} from '../../../../../controller/engine/state.ts';
import type { TrustedReading } from '../../../../../shared-types/readings.ts';
import { nowMs, situationOf } from '../../situations.ts';
import { hourMs, lasting } from './watched.ts';

const ordered = { storeBottomC: 20, storeMiddleC: 30, storeTopC: 40 };
const inverted = { storeBottomC: 40, storeMiddleC: 30, storeTopC: 20 };
const byOrder: Doubt = { cause: 'disagrees', by: 'store-order', provenMs: 7 };
const byInlet: Doubt = { cause: 'disagrees', by: 'inlet-source', provenMs: 7 };
const proven: Doubt = { ...byOrder, provenMs: nowMs };

function look(told: object, watch: Partial<WatchMemory> = {}, given = {}, state = {}) {
  const before = { ...unwatched, lookedMs: nowMs - 60_000, ...watch };
  return updateWatch(situationOf({ told, ...given, state: { watch: before, ...state } }));
}

describe('the watch over the sensors', () => {
  it('looks once a minute', () => {
    const before = { ...unwatched, lookedMs: nowMs - 59_999 };
    expect(updateWatch(situationOf({ told: inverted, state: { watch: before } }))).toBe(before);
    expect(look(inverted)).toMatchObject({ lookedMs: nowMs, evidence: { 'store-order': 1 } });
  });

  it.each([
    [inverted, 58, 59, 0],
    [inverted, 59, 60, 3],
    [inverted, 60, 60, 3],
    [inverted, -5, 1, 0],
    [ordered, 60, 59, 0],
    [ordered, -1438, -1439, 0],
    [ordered, -1440, -1440, 0],
  ])('%o after %d looks against it: %d, and %d in doubt', (told, before, after, count) => {
    const { evidence, doubts } = look(told, { evidence: { 'store-order': before } });
    expect([evidence['store-order'], Object.keys(doubts).length]).toEqual([after, count]);
  });

  it('makes nothing anew where nothing changes', () => {
    const evidence = { 'store-order': -1440 };
    const doubts = {};
    const after = look(ordered, { evidence, doubts });
    expect([after.evidence === evidence, after.doubts === doubts]).toEqual([true, true]);
  });

  it('takes a good look for one, however many spoke against it', () => {
    const before = { evidence: { 'store-order': 70 }, doubts: { storeTopC: byOrder } };
    expect(look(ordered, before)).toMatchObject({ ...before, evidence: { 'store-order': 69 } });
  });

  it.each<[string, number, WatchMemory['doubts'], WatchMemory['doubts']]>([
    ['before the last good look', -1438, { storeTopC: byOrder }, { storeTopC: byOrder }],
    ['with the last good look', -1439, { storeTopC: byOrder, panInletC: byInlet }, { panInletC: byInlet }],
  ])('lets go %s', (_when, before, doubts, after) => {
    expect(look(ordered, { evidence: { 'store-order': before }, doubts }).doubts).toEqual(after);
  });

  it.each<[string, object, WatchMemory['doubts'], WatchMemory['doubts']]>([
    ['those that it accuses again', inverted, { storeTopC: byOrder }, { storeTopC: proven }],
    [
      'all where those that it accused are cleared',
      { storeBottomC: 40, storeMiddleC: 30, storeTopC: 31 },
      { storeTopC: byOrder, panInletC: byInlet },
      { storeBottomC: proven, panInletC: byInlet },
    ],
    [
      'none where another doubt explains it',
      inverted,
      { storeTopC: byOrder, storeBottomC: byInlet },
      { storeBottomC: byInlet },
    ],
  ])('keeps to %s', (_which, told, doubts, after) => {
    expect(look(told, { evidence: { 'store-order': 60 }, doubts }).doubts).toEqual(after);
  });

  it('knows for how long it is dark', () => {
    const settled = 2 * hourMs;
    const dark = (darkMs: number | null) =>
      look(
        { panOutletC: 30, ambientC: 15, humidityFraction: 0.5 },
        { darkMs, nightDewC: 1 },
        { level: 'empty', sunHeightDeg: -9 },
        lasting('empty', settled),
      );
    expect(dark(nowMs - settled)).toMatchObject({
      darkMs: nowMs - settled,
      evidence: { 'pan-at-night': 1 },
      nightDewC: dewPointC(15, 0.5),
    });
    expect(dark(nowMs - settled + 1).evidence).toEqual({});
    expect(dark(null).darkMs).toBe(nowMs);
    const light = look({ panOutletC: 30, ambientC: 15 }, {}, { level: 'empty' }, lasting('empty', settled));
    expect(light.evidence).toEqual({});
    expect(look({}, { darkMs: 5, nightDewC: 1 })).toMatchObject({ darkMs: null, nightDewC: 1 });
  });
});

describe('sensors that tell of themselves', () => {
  const memory = (scatter: number, changedMs = nowMs): ChannelMemory => ({
    recent: [],
    arrivedMs: nowMs,
    changedMs,
    scatter,
    unreadable: 0,
    cause: null,
  });
  const noisy: Doubt = { cause: 'noisy', by: 'itself', provenMs: 7 };
  const doubtsOf = (sensing: object, doubts: WatchMemory['doubts'] = {}, watch = {}, told = {}) =>
    look(told, { doubts, ...watch }, {}, { sensing }).doubts;

  it('are noisy, or stuck', () => {
    expect(doubtsOf({ ambientC: memory(1.5) })).toEqual({ ambientC: { ...noisy, provenMs: nowMs } });
    const still = { panSheetC: { lowC: 10, highC: 16 } };
    expect(
      doubtsOf({ panSheetC: memory(9, nowMs - 3 * hourMs + 60_000) }, {}, { still }, { panOutletC: 12 }),
    ).toEqual({
      panSheetC: { cause: 'noisy', by: 'itself', provenMs: nowMs },
    });
    const stuck = doubtsOf({ panSheetC: memory(9, nowMs - 3 * hourMs) }, {}, { still }, { panOutletC: 12 });
    expect(stuck).toEqual({ panSheetC: { cause: 'stuck', by: 'itself', provenMs: nowMs } });
  });

  it('go free once they no longer are, of their own doubt alone', () => {
    expect(doubtsOf({ ambientC: memory(0) }, { ambientC: noisy })).toEqual({});
    expect(doubtsOf({ ambientC: memory(0) })).toEqual({});
    expect(doubtsOf({ ambientC: memory(0) }, { ambientC: byInlet })).toEqual({ ambientC: byInlet });
  });

  it('stay as they were while nothing is heard of them', () => {
    expect(doubtsOf({}, { ambientC: noisy })).toEqual({ ambientC: noisy });
  });
});

describe('readings in doubt', () => {
  const reading: TrustedReading = { quality: 'good', value: 20, ageMs: 30 };
  const watch = (provenMs: number): WatchMemory => ({
    ...unwatched,
    doubts: { ambientC: { cause: 'stuck', by: 'itself', provenMs } },
  });

  it('are marked for a day', () => {
    expect(doubtMs).toBe(24 * hourMs);
    const readings = { ambientC: reading, panOutletC: reading };
    expect(withDoubts(readings, watch(5), 4 + doubtMs)).toEqual({
      ambientC: { quality: 'doubtful', value: 20, ageMs: 30, cause: 'stuck' },
      panOutletC: reading,
    });
    expect(withDoubts(readings, watch(5), 5 + doubtMs)).toBe(readings);
    expect(withDoubts(readings, unwatched, 5)).toBe(readings);
  });

  it('are not marked where there are none', () => {
    const failed = { ambientC: { quality: 'failed', cause: 'stale' } } as const;
    expect(withDoubts(failed, watch(5), 6)).toBe(failed);
    const other = { panOutletC: reading };
    expect(withDoubts(other, watch(5), 6)).toBe(other);
  });

  it.each([
    ['stuck', true],
    ['noisy', true],
    ['disagrees', true],
    ['jumped', false],
    ['unreadable', false],
  ] as const)('that are %s last longer than a moment: %s', (cause, lasts) => {
    expect(isDoubted({ ...reading, quality: 'doubtful', cause })).toBe(lasts);
    expect(isDoubted({ quality: 'failed', cause })).toBe(false);
    expect([isDoubted(reading), isDoubted(undefined)]).toEqual([false, false]);
  });
});

describe('scatter', () => {
  const at = (lastMs: number, ...values: number[]) =>
    values.map((value, i) => ({ value, atMs: i < 2 ? 1000 * (i + 1) : lastMs }));

  it('takes a hundredth of each second difference, of 10 at most', () => {
    expect(scatterAfter(1, at(3000, 10, 12, 15))).toBe(1);
    expect(scatterAfter(1, at(3000, 10, 13, 10))).toBeCloseTo(1.05, 12);
    expect(scatterAfter(0, at(3000, 10, 30, 10))).toBeCloseTo(0.1, 12);
    expect(scatterAfter(1, at(3000, 10, 12))).toBe(1);
    expect(scatterAfter(1, at(3000, 10))).toBe(1);
    expect(scatterAfter(1, [])).toBe(1);
  });

  it('leaves samples alone that span more than half a minute', () => {
    expect(scatterAfter(0, at(31_000, 10, 15, 10))).toBeCloseTo(0.1, 12);
    expect(scatterAfter(0, at(31_001, 10, 15, 10))).toBe(0);
  });
});

describe('the name of a comparison', () => {
  it('is one of the list', () => {
    expect([isComparisonName('store-order'), isComparisonName('gossip'), isComparisonName(3)]).toEqual([
      true,
      false,
      false,
    ]);
  });
});
