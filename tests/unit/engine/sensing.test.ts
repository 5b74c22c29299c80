import { describe, expect, it } from 'vitest';
import { levelSays } from '../../../controller/engine/sense/pan-water.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { RawReading } from '../../../shared-types/readings.ts';
import { allSensors, Loop, makeSite } from './rig.ts';

const site = makeSite('drain-valve', allSensors);

/** Steps once for each sample and returns what is believed of the channel after each. */
function readings(samples: readonly (number | RawReading)[], channel: Channel = 'ambientC', stepS = 5) {
  const loop = new Loop(site).set({ flowLMin: 0, panLevelMm: 0 });
  return samples.map((sample) => loop.set({ [channel]: sample }).step(stepS).last.belief.readings[channel]);
}

const bad = (fault: RawReading['fault']): RawReading => ({
  value: null,
  ageMs: 100,
  ...(fault === undefined ? {} : { fault }),
});

describe('a reading', () => {
  it('is the median of its newest three samples', () => {
    expect(readings([10, 12, 11, 18, 12])).toMatchObject([
      { quality: 'good', value: 10 },
      { quality: 'good', value: 12 },
      { quality: 'good', value: 11 },
      { quality: 'good', value: 12 },
      { quality: 'good', value: 12 },
    ]);
  });

  it('counts a sample once, however often it is seen', () => {
    const seen = [0, 1, 2].map((step) => ({ value: 30, ageMs: 100 + step * 5000 }));
    expect(readings([10, 10, ...seen]).at(-1)).toMatchObject({ value: 10 });
    expect(readings([10, 10, 30, 30, 30]).at(-1)).toMatchObject({ value: 30 });
  });

  it('is doubtful while its newest sample is far from the others', () => {
    expect(readings([10, 10, 10, 26])).toMatchObject([
      {},
      {},
      {},
      { quality: 'doubtful', value: 10, cause: 'jumped' },
    ]);
    expect(readings([10, 10, 10, 24]).at(-1)).toMatchObject({ quality: 'good' });
  });

  it('follows flow and power at once', () => {
    expect(readings([20, 20, 20, 0], 'flowLMin').at(-1)).toMatchObject({ quality: 'good', value: 0 });
    expect(readings([50, 50, 50, 0], 'pumpPowerW').at(-1)).toMatchObject({ quality: 'good', value: 0 });
  });

  it.each([
    [bad('open-circuit'), 'open-circuit'],
    [bad('short-circuit'), 'short-circuit'],
    [bad('unreadable'), 'unreadable'],
    [bad(undefined), 'unreadable'],
    [{ value: Number.NaN, ageMs: 100 }, 'not-a-number'],
    [{ value: Number.POSITIVE_INFINITY, ageMs: 100 }, 'not-a-number'],
    [61, 'out-of-range'],
    [-51, 'out-of-range'],
  ])('that is %o is bridged once by the last good one, then failed: %s', (sample, cause) => {
    expect(readings([10, sample, sample])).toMatchObject([
      { quality: 'good' },
      { quality: 'doubtful', value: 10, cause },
      { quality: 'failed', cause },
    ]);
    expect(readings([sample])).toEqual([{ quality: 'failed', cause }]);
  });

  it('is bridged for less than ten seconds', () => {
    expect(readings([10, bad('open-circuit')], 'ambientC', 10).at(-1)).toMatchObject({ quality: 'failed' });
  });

  it('begins anew after an outage', () => {
    const fault = bad('open-circuit');
    expect(readings([10, 10, fault, fault, 40]).at(-1)).toEqual({ quality: 'good', value: 40, ageMs: 100 });
  });

  it('fails when it is stale, and when it was never heard', () => {
    expect(
      readings([
        { value: 10, ageMs: 60_000 },
        { value: 10, ageMs: 60_001 },
      ]),
    ).toMatchObject([{ quality: 'good' }, { quality: 'failed', cause: 'stale' }]);
    const silent = new Loop(site).without('ambientC').step();
    expect(silent.last.belief.readings.ambientC).toEqual({ quality: 'failed', cause: 'missing' });
  });

  it("is held to the sensor's own limits, and to the channel's where it has none", () => {
    const narrow = { ambientC: { key: 'a', unit: 'C', least: 0, most: 30 } };
    const own = makeSite('drain-valve', allSensors, { sensors: { ...site.sensors, ...narrow } });
    const loop = new Loop(own).set({ ambientC: 31, panSheetC: 149 }).step();
    expect(loop.last.belief.readings.ambientC).toMatchObject({ cause: 'out-of-range' });
    expect(loop.last.belief.readings.panSheetC).toMatchObject({ quality: 'good' });
  });

  it('is only believed of sensors that the site has', () => {
    const loop = new Loop(makeSite('drain-valve', ['panOutletC', 'storeBottomC'])).step();
    expect(Object.keys(loop.last.belief.readings)).toEqual(['panOutletC', 'storeBottomC']);
  });

  it.each([{}, { value: '7', ageMs: 5 }, { value: 7, ageMs: -1 }, { value: 7, ageMs: '0' }, 7, null])(
    'that is %o is not used',
    (raw) => {
      const loop = new Loop(site).set({ ambientC: raw as RawReading });
      if (typeof raw === 'number') loop.set({ ambientC: [] as unknown as RawReading });
      expect(loop.step().last.belief.readings.ambientC).toMatchObject({ quality: 'failed' });
    },
  );
});

describe('the level of the pan', () => {
  it.each([
    [36, 'part', 'full'],
    [35.9, 'part', 'part'],
    [32, 'full', 'full'],
    [31.9, 'full', 'part'],
    [4, 'part', 'empty'],
    [4.1, 'part', 'part'],
    [8, 'empty', 'empty'],
    [8.1, 'empty', 'part'],
    [40, 'unknown', 'full'],
  ] as const)('%d mm of 40, before %s, is %s', (levelMm, before, expected) => {
    expect(levelSays(levelMm, 40, before)).toBe(expected);
  });

  it('takes a film of 2 mm for empty in the shallowest pan', () => {
    expect(levelSays(2, 5, 'part')).toBe('empty');
    expect(levelSays(2.1, 5, 'part')).toBe('part');
  });

  it('proves nothing while it is doubtful, and time takes its place when it fails', () => {
    const loop = new Loop(site).set({ panLevelMm: 20, flowLMin: 0 }).step(null).run(40);
    loop.set({ panLevelMm: { value: null, ageMs: 100, fault: 'open-circuit' } }).run(15);
    expect([loop.phase, loop.last.belief.water]).toEqual(['emptying', 'part']);
    loop.run(10);
    expect([loop.phase, loop.last.belief.water]).toEqual(['empty', 'empty']);
  });
});
