import { describe, expect, it } from 'vitest';
import { isNoisy, isStuck, updateStill } from '../../../../../controller/engine/sense/doubt/itself.ts';
import {
  type ChannelMemory,
  type EngineState,
  unwatched,
  type WatchMemory,
} from '../../../../../controller/engine/state.ts';
import type { Channel } from '../../../../../shared-types/channels.ts';
import { nowMs, situationOf, type Told } from '../../situations.ts';
import { hourMs, lasting } from './watched.ts';

type Still = WatchMemory['still'];

function same(channel: Channel, forMs: number, scatter = 0): Pick<EngineState, 'sensing'> {
  const memory: ChannelMemory = {
    recent: [],
    arrivedMs: nowMs,
    changedMs: nowMs - forMs,
    scatter,
    unreadable: 0,
    cause: null,
  };
  return { sensing: { [channel]: memory } };
}

describe('what a sensor that shows the same is beside', () => {
  const seen = (told: Told, still: Still = {}, channel: Channel = 'panSheetC', forMs = 600_000, state = {}) =>
    updateStill(
      situationOf({ told, state: { ...same(channel, forMs), watch: { ...unwatched, still }, ...state } }),
    );

  it('is looked at after ten minutes', () => {
    expect(seen({ panOutletC: 30 })).toEqual({ panSheetC: { lowC: 30, highC: 30 } });
    expect(seen({ panOutletC: 30 }, {}, 'panSheetC', 599_999)).toEqual({});
  });

  it('is the range of its first witness that says anything', () => {
    const before = { panSheetC: { lowC: 25, highC: 35 } };
    expect(seen({ panOutletC: 20 }, before)).toEqual({ panSheetC: { lowC: 20, highC: 35 } });
    expect(seen({ panOutletC: 40 }, before)).toEqual({ panSheetC: { lowC: 25, highC: 40 } });
    expect(seen({ panInletC: 40, ambientC: 3 }, before)).toEqual({ panSheetC: { lowC: 25, highC: 40 } });
    const failed = { quality: 'failed', cause: 'missing' } as const;
    expect(seen({ panOutletC: failed, panInletC: 40 })).toEqual({ panSheetC: { lowC: 40, highC: 40 } });
    expect([seen({}, before), seen({})]).toStrictEqual([before, {}]);
  });

  it.each<[Channel, Channel]>([
    ['panInletC', 'storeBottomC'],
    ['storeBottomC', 'panInletC'],
    ['reservoirC', 'panInletC'],
  ])('counts for %s while water passes %s alone', (channel, witness) => {
    const stream = lasting('circulating', hourMs);
    expect(seen({ [witness]: 30 }, {}, channel, hourMs)).toEqual({});
    expect(seen({ [witness]: 30 }, {}, channel, hourMs, stream)).toEqual({
      [channel]: { lowC: 30, highC: 30 },
    });
  });
});

describe('a sensor that stands still', () => {
  const stuck = (channel: Channel, forMs: number, movedK: number, level: 'empty' | 'full' = 'empty') =>
    isStuck(
      channel,
      { [channel]: { lowC: 10, highC: 10 + movedK } },
      situationOf({ level, state: same(channel, forMs) }),
    );

  it.each<[Channel, number, number, number]>([
    ['panOutletC', 3, 0.5, 6],
    ['panSheetC', 3, 0.5, 6],
    ['panInletC', 3, 3, 10],
    ['storeBottomC', 3, 3, 10],
    ['reservoirC', 3, 3, 10],
    ['ambientC', 12, 12, 15],
  ])(
    '%s is stuck after %d h, %d h in water, while its witness moved by %d K',
    (channel, emptyH, fullH, movedK) => {
      const [empty, full] = [emptyH * hourMs, fullH * hourMs];
      expect([stuck(channel, empty - 1, movedK), stuck(channel, empty, movedK)]).toEqual([false, true]);
      expect([stuck(channel, full - 1, movedK, 'full'), stuck(channel, full, movedK, 'full')]).toEqual([
        false,
        true,
      ]);
      expect(stuck(channel, empty, movedK - 0.001)).toBe(false);
    },
  );

  it('is not stuck without a range, a memory or a rule', () => {
    const situation = situationOf({ state: same('panOutletC', 12 * hourMs) });
    const range = { lowC: 0, highC: 90 };
    expect(isStuck('panOutletC', {}, situation)).toBe(false);
    expect(isStuck('panSheetC', { panSheetC: range }, situation)).toBe(false);
    const top = situationOf({ state: same('storeTopC', 12 * hourMs) });
    expect(isStuck('storeTopC', { storeTopC: range }, top)).toBe(false);
  });
});

describe('a sensor that scatters', () => {
  const noisy = (scatter: number, cause?: 'noisy' | 'stuck') => {
    const doubts = cause === undefined ? {} : { ambientC: { cause, by: 'itself', provenMs: 0 } as const };
    return isNoisy(
      'ambientC',
      situationOf({ state: { ...same('ambientC', 0, scatter), watch: { ...unwatched, doubts } } }),
    );
  };

  it('is noisy from 1.5 K on, and until 0.75 K', () => {
    expect([noisy(1.499), noisy(1.5)]).toEqual([false, true]);
    expect([noisy(0.749, 'noisy'), noisy(0.75, 'noisy')]).toEqual([false, true]);
    expect([noisy(1.499, 'stuck'), noisy(1.5, 'stuck')]).toEqual([false, true]);
    expect(isNoisy('panSheetC', situationOf({ state: same('ambientC', 0, 9) }))).toBe(false);
  });
});
