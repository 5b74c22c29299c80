import { describe, expect, it } from 'vitest';
import { doubtsOf, minutes } from './doubt-rig.ts';
import { circulatingLoop, Loop, makeSite, restingLoop, type Values } from './rig.ts';

const site = makeSite('drain-valve');
const sheetOnly = makeSite('drain-valve', ['panSheetC', 'storeBottomC', 'ambientC']);
const layered = makeSite('drain-valve', [
  'panOutletC',
  'panSheetC',
  'storeBottomC',
  'storeMiddleC',
  'storeTopC',
  'ambientC',
]);

/** A loop whose pan was empty for hours when the night has lasted for hours. */
function atNight(ofSite: typeof site, values: Values): Loop {
  const loop = new Loop(ofSite);
  loop.nowMs = Date.UTC(2031, 5, 21, 22);
  loop.set({ panOutletC: 14, panSheetC: 12, panInletC: 14, storeBottomC: 30, storeTopC: 40, ambientC: 15 });
  loop.until('empty').set(values);
  return minutes(loop, 119);
}

const accused = (loop: Loop, by: string) => doubtsOf(loop).filter((text) => text.endsWith(by));
const night = (ofSite: typeof site, values: Values) =>
  accused(minutes(atNight(ofSite, values), 61), 'pan-at-night').map((text) => text.split(' ')[0]);

describe('an empty pan at night', () => {
  it('follows the air', () => {
    expect(night(site, {})).toEqual([]);
    expect(night(site, { panOutletC: 18, panSheetC: 1, panInletC: 18 })).toEqual([]);
  });

  it.each([
    [{ panOutletC: 18.1 }, ['panOutletC']],
    [{ panSheetC: 0.9 }, ['panSheetC']],
    [{ panInletC: 18.1 }, ['panInletC']],
    [{ panOutletC: 18.1, panInletC: 18.1 }, ['panInletC', 'panOutletC']],
    // Three that stand together outvote the air.
    [{ panOutletC: 21, panSheetC: 20, panInletC: 22 }, ['ambientC']],
    [{ panOutletC: 22, panSheetC: 18.1, panInletC: 22 }, ['ambientC']],
    [
      { panOutletC: 22.2, panSheetC: 18.1, panInletC: 22 },
      ['ambientC', 'panInletC', 'panOutletC', 'panSheetC'],
    ],
    // A store as cold as the air: the two may be swapped.
    [{ panOutletC: 25, storeBottomC: 18 }, ['panOutletC', 'storeBottomC']],
    [{ panOutletC: 25, storeBottomC: 18.1 }, ['panOutletC']],
  ])('%o: %j are wrong', (values, expected) => {
    expect(night(site, values)).toEqual(expected);
  });

  it('tells nothing by its only sensor but that it or the air is wrong', () => {
    expect(night(sheetOnly, { panSheetC: 19 })).toEqual(['ambientC', 'panSheetC']);
  });

  it('is judged after two hours of dark and of emptiness, and an hour of looks', () => {
    const loop = atNight(site, { panOutletC: 25 });
    minutes(loop, 59);
    expect(accused(loop, 'pan-at-night')).toEqual([]);
    minutes(loop, 2);
    expect(accused(loop, 'pan-at-night')).toHaveLength(1);
  });

  it('is judged neither by day nor without the air', () => {
    const day = new Loop(site).until('empty').set({ panOutletC: 25 });
    expect(accused(minutes(day, 240), 'pan-at-night')).toEqual([]);
    const blind = { ambientC: { value: null, ageMs: 100, fault: 'open-circuit' } } as const;
    expect(night(site, { panOutletC: 25, ...blind })).toEqual([]);
  });
});

describe('sheet and outlet of a full pan', () => {
  const full = (values: Values, count = 30) => {
    const loop = circulatingLoop(site).set(values);
    return accused(minutes(loop, count), 'sheet-outlet').map((text) => text.split(' ')[0]);
  };

  it.each([
    [{ panSheetC: 19 }, []],
    [{ panSheetC: 18.9 }, ['panSheetC']],
    [{ panSheetC: 42 }, []],
    // Beside the air of 15 °C the outlet seems to have fallen off from 35 % of the sheet's distance on.
    [{ panSheetC: 50, panOutletC: 27.2 }, ['panOutletC']],
    [{ panSheetC: 50, panOutletC: 27.3 }, ['panOutletC', 'panSheetC']],
    [{ panSheetC: 50, panOutletC: 34, storeBottomC: 31 }, ['panOutletC', 'panSheetC']],
    // A store that goes with the sheet is the water of the pan.
    [{ panSheetC: 50, panOutletC: 34, storeBottomC: 46, panInletC: 46 }, ['panOutletC', 'storeBottomC']],
    [{ panSheetC: 50, panOutletC: 34, storeBottomC: 45.9, panInletC: 45.9 }, ['panOutletC', 'panSheetC']],
  ])('%o: %j are wrong', (values, expected) => {
    // At rest, so that no difference ends the phase.
    const loop = restingLoop(site).set({ panOutletC: 27, panSheetC: 27, storeBottomC: 27 });
    const before = loop.state.phase;
    loop.state = { ...loop.state, phase: { name: 'resting', sinceMs: before.sinceMs } };
    loop.set(values);
    loop.settings = { ...loop.settings, startDifferenceK: 30, fillDifferenceK: 60, emptyAfterMin: 600 };
    for (let i = 0; i < 32; i++) {
      minutes(loop, 1);
      const { state } = loop;
      loop.state = { ...state, phase: before, water: { ...state.water, level: 'full' }, gain: null };
    }
    expect(accused(loop, 'sheet-outlet').map((text) => text.split(' ')[0])).toEqual(expected);
  });

  it('are compared a quarter of an hour after the pump began, for another quarter', () => {
    expect(full({ panSheetC: 16 }, 28)).toEqual([]);
    expect(full({ panSheetC: 16 }, 30)).toEqual(['panSheetC']);
  });
});

describe('the order of the store', () => {
  const store = (storeBottomC: number, storeMiddleC: number, storeTopC: number, count = 61) => {
    const loop = new Loop(layered).until('empty').set({ storeBottomC, storeMiddleC, storeTopC });
    return accused(minutes(loop, count), 'store-order').map((text) => text.split(' ')[0]);
  };

  it.each([
    [20, 30, 40, []],
    [22.5, 20, 21, []],
    [22.6, 20, 21, ['storeBottomC', 'storeMiddleC']],
    [40, 30, 31, ['storeBottomC']],
    [20, 15, 21, ['storeBottomC', 'storeMiddleC']],
    [20, 26, 22, ['storeMiddleC', 'storeTopC']],
    [20, 26, 15, ['storeTopC']],
    [28, 25, 40, ['storeBottomC', 'storeMiddleC']],
    [40, 30, 20, ['storeBottomC', 'storeMiddleC', 'storeTopC']],
  ])('bottom %d, middle %d, top %d °C: %j are wrong', (bottomC, middleC, topC, expected) => {
    expect(store(bottomC, middleC, topC)).toEqual(expected);
  });

  it('is looked at for an hour', () => {
    expect(store(40, 30, 31, 59)).toEqual([]);
    expect(store(40, 30, 31, 61)).toEqual(['storeBottomC']);
  });

  it('tells of both where there are two', () => {
    const loop = new Loop(site).until('empty').set({ storeBottomC: 30, storeTopC: 25 });
    expect(accused(minutes(loop, 61), 'store-order')).toHaveLength(2);
  });

  it('keeps to those that it accuses again, and adds none where a doubt explains it', () => {
    const loop = new Loop(layered).until('empty').set({ storeBottomC: 28, storeMiddleC: 25, storeTopC: 40 });
    minutes(loop, 61);
    minutes(loop.set({ storeMiddleC: 35, storeBottomC: 39 }), 2);
    expect(accused(loop, 'store-order')).toHaveLength(2);
    minutes(loop.set({ storeMiddleC: 30, storeBottomC: 45 }), 2);
    expect(accused(loop, 'store-order')).toEqual(['storeBottomC disagrees store-order']);
    minutes(loop.set({ storeMiddleC: 35, storeBottomC: 42, storeTopC: 40 }), 2);
    expect(accused(loop, 'store-order')).toEqual(['storeBottomC disagrees store-order']);
  });

  it('clears after a day of good looks alone', () => {
    const loop = new Loop(layered).until('empty').set({ storeBottomC: 40, storeMiddleC: 30, storeTopC: 31 });
    minutes(loop, 61);
    loop.set({ storeBottomC: 20 });
    minutes(loop, 24 * 60 + 58);
    expect(accused(loop, 'store-order')).toHaveLength(1);
    minutes(loop, 3);
    expect(accused(loop, 'store-order')).toEqual([]);
  });
});
