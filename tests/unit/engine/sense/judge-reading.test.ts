import { describe, expect, it } from 'vitest';
import type { SoundReading } from '../../../../controller/engine/input.ts';
import { failedReading, judgeReading, remember } from '../../../../controller/engine/sense/judge-reading.ts';
import { median } from '../../../../controller/engine/sense/median.ts';
import type { SensorRules } from '../../../../controller/engine/sense/sensor-rules.ts';
import type { ChannelMemory, Sample } from '../../../../controller/engine/state.ts';

const rules: SensorRules = { channel: 'ambientC', least: -50, most: 60, smoothed: true };
const atOnce: SensorRules = { ...rules, smoothed: false };

const reading = (value: number | null, changes: Partial<SoundReading> = {}): SoundReading => ({
  value,
  ageMs: 0,
  fault: null,
  ...changes,
});
const samples = (...values: number[]): Sample[] => values.map((value, i) => ({ value, atMs: i * 1000 }));

const memory = (changes: Partial<ChannelMemory>): ChannelMemory => ({
  recent: samples(10, 11, 12),
  arrivedMs: 2000,
  changedMs: 2000,
  scatter: 0,
  unreadable: 0,
  cause: null,
  ...changes,
});

describe('the median', () => {
  it.each([
    [[], Number.NaN],
    [[4], 4],
    [[4, 9], 9],
    [[1, 2, 3], 2],
    [[3, 1, 2], 2],
    [[2, 3, 1], 2],
    [[2, 1, 3], 2],
    [[1, 3, 2], 2],
    [[3, 2, 1], 2],
    [[99, 1, 2, 3], 2],
  ])('of %j is %d', (values, expected) => {
    expect(median(samples(...values))).toBe(expected);
  });
});

describe('what is remembered of a channel', () => {
  it('begins with the first sample', () => {
    expect(remember(reading(10, { ageMs: 300 }), undefined, rules, 1000)).toEqual({
      recent: [{ value: 10, atMs: 700 }],
      arrivedMs: 700,
      changedMs: 700,
      scatter: 0,
      unreadable: 0,
      cause: null,
    });
  });

  it('takes two arrivals within 20 ms for one sample', () => {
    const before = memory({});
    expect(remember(reading(13), before, rules, 2020)).toBe(before);
    expect(remember(reading(13), before, rules, 2021)).toMatchObject({ arrivedMs: 2021 });
  });

  it('holds the newest three samples', () => {
    const values = (recent: readonly Sample[], by: SensorRules, unreadable = 0) =>
      remember(reading(13), memory({ recent, unreadable }), by, 9000).recent.map(({ value }) => value);
    expect(values([], rules)).toEqual([13]);
    expect(values(samples(10), rules)).toEqual([10, 13]);
    expect(values(samples(10, 11), rules)).toEqual([10, 11, 13]);
    expect(values(samples(10, 11, 12), rules)).toEqual([11, 12, 13]);
    expect(values(samples(10, 11, 12), atOnce)).toEqual([13]);
    expect([values(samples(10, 11), rules, 1), values(samples(10, 11), rules, 2)]).toEqual([
      [10, 11, 13],
      [13],
    ]);
  });

  it('keeps since when the sensor shows the same', () => {
    const changed = (value: number, recent: readonly Sample[]) =>
      remember(reading(value), memory({ recent }), rules, 9000).changedMs;
    expect([changed(12, samples(10, 11, 12)), changed(11, samples(10, 11, 12))]).toEqual([2000, 9000]);
    expect([changed(10, samples(10)), changed(11, samples(10)), changed(10, [])]).toEqual([2000, 9000, 9000]);
    expect(changed(10, samples(10, 12))).toBe(9000);
  });

  it('adds to the scatter, and clears what could not be read', () => {
    const before = memory({ recent: samples(10, 12), scatter: 1, unreadable: 1, cause: 'unreadable' });
    const next = remember(reading(10), before, rules, 3000);
    expect(next.scatter).toBeCloseTo(1.03, 12);
    expect(next).toMatchObject({ unreadable: 0, cause: null });
  });

  it('has no nought below nought', () => {
    expect(Object.is(remember(reading(-0), undefined, rules, 0).recent[0]?.value, 0)).toBe(true);
  });

  it.each<[SoundReading, string | null]>([
    [reading(10, { fault: 'short-circuit' }), 'short-circuit'],
    [reading(null, { fault: 'open-circuit' }), 'open-circuit'],
    [reading(null), 'unreadable'],
    [reading(Number.NaN), 'not-a-number'],
    [reading(Number.NEGATIVE_INFINITY), 'not-a-number'],
    [reading(-50.1), 'out-of-range'],
    [reading(-50), null],
    [reading(60), null],
    [reading(60.1), 'out-of-range'],
  ])('%o cannot be read: %s', (given, cause) => {
    const next = remember(given, memory({ unreadable: 1 }), rules, 9000);
    expect(next).toMatchObject({ cause, unreadable: cause === null ? 0 : 2, arrivedMs: 9000 });
    if (cause !== null) expect(next.recent).toEqual(samples(10, 11, 12));
  });
});

describe('how far a channel is trusted', () => {
  it.each([
    [10_999, { quality: 'doubtful', value: 11, ageMs: 70, cause: 'unreadable' }],
    [11_999, { quality: 'doubtful', value: 11, ageMs: 70, cause: 'unreadable' }],
    [12_000, { quality: 'failed', cause: 'unreadable' }],
  ])('one unreadable sample is bridged for less than ten seconds: at %d ms %o', (runMs, expected) => {
    expect(judgeReading(70, memory({ unreadable: 1, cause: 'unreadable' }), runMs)).toEqual(expected);
  });

  it('is none after two unreadable samples, or where none was read before', () => {
    const failed = failedReading('stale');
    expect(failed).toEqual({ quality: 'failed', cause: 'stale' });
    expect(judgeReading(70, memory({ unreadable: 2, cause: 'stale' }), 3000)).toEqual(failed);
    expect(judgeReading(70, memory({ unreadable: 1, cause: 'stale', recent: [] }), 3000)).toEqual(failed);
  });

  it.each<[Sample[], boolean]>([
    [samples(10), false],
    [samples(10, 30), false],
    // Samples that come a second apart may differ by 11 K.
    [samples(10, 10, 21), false],
    [samples(10, 10, 21.1), true],
    [samples(10, 10, -1), false],
    [samples(10, 10, -1.1), true],
    [samples(10, 50, 50), false],
    [[...samples(10, 10), { value: 23, atMs: 4000 }], false],
    [[...samples(10, 10), { value: 23.1, atMs: 4000 }], true],
  ])('%j have jumped: %s', (recent, jumped) => {
    const value = median(recent);
    expect(judgeReading(70, memory({ recent }), 5000)).toEqual(
      jumped
        ? { quality: 'doubtful', value, ageMs: 70, cause: 'jumped' }
        : { quality: 'good', value, ageMs: 70 },
    );
  });
});
