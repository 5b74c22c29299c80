import { describe, expect, it } from 'vitest';
import {
  isOutOfSeason,
  isSeasonNear,
  updateAirLows,
} from '../../../../controller/engine/hazards/air-lows.ts';
import { daysToFrostSeason, isInFrostSeason } from '../../../../controller/engine/hazards/frost-season.ts';
import { fallToFrost, updateFall } from '../../../../controller/engine/hazards/frost-trend.ts';
import { coolingCommand, isCooling } from '../../../../controller/engine/hazards/night-cooling.ts';
import { initialState } from '../../../../controller/engine/state.ts';
import { makeSite } from '../rig.ts';
import { nowMs, situationOf, type Told } from '../situations.ts';

const initial = initialState();
const winter = makeSite('corner', undefined, { frostSeason: { from: '10-01', to: '03-31' } });
const summer = makeSite('corner', undefined, { frostSeason: { from: '05-01', to: '09-30' } });
const corner = makeSite('corner');
const valve = makeSite('drain-valve');

describe('the frost season', () => {
  it.each([
    ['2031-09-30', false, true, 1],
    ['2031-10-01', true, false, 0],
    ['2031-03-31', true, false, 184],
    ['2031-04-01', false, false, 183],
    ['2031-05-01', false, true, 153],
    ['2031-10-02', true, false, 364],
    ['2031-12-31', true, false, 274],
  ])('on %s: in winter %s, in summer %s, next in %d days', (day, inWinter, inSummer, days) => {
    expect([isInFrostSeason(winter, day), isInFrostSeason(summer, day)]).toEqual([inWinter, inSummer]);
    expect(daysToFrostSeason(winter, day)).toBe(days);
  });

  it('may be a single day', () => {
    const day = makeSite('corner', undefined, { frostSeason: { from: '01-15', to: '01-15' } });
    const days = ['2031-01-14', '2031-01-15', '2031-01-16'];
    expect(days.map((one) => isInFrostSeason(day, one))).toEqual([false, true, false]);
  });

  it('is always where none is set, or the day is not known', () => {
    expect([isInFrostSeason(corner, '2031-07-01'), isInFrostSeason(summer, null)]).toEqual([true, true]);
    expect([daysToFrostSeason(corner, '2031-07-01'), daysToFrostSeason(summer, null)]).toEqual([null, null]);
  });
});

describe('the cold air of past nights', () => {
  const lows = { todayC: 5, daysC: [1, 2, 3, 4, 5, 6, 7] };
  const air = (ambientC: number) => ({ ambientC: { quality: 'good', value: ambientC, ageMs: 0 } }) as const;
  const near = (todayC: number | null, daysC: number[] = [], site = corner, localDay = '2031-07-01') => {
    const situation = situationOf({ site, localDay, state: { airLows: { todayC, daysC } } });
    return [isSeasonNear(situation), isOutOfSeason(situation)];
  };

  it('is kept by the day for a week, where nothing else tells the season', () => {
    expect(updateAirLows(lows, air(4.9), corner, false)).toEqual({ ...lows, todayC: 4.9 });
    expect(updateAirLows(lows, air(5), corner, false)).toBe(lows);
    expect(updateAirLows({ todayC: null, daysC: [] }, air(9), corner, false).todayC).toBe(9);
    expect(updateAirLows(lows, air(9), corner, true)).toEqual({ todayC: 9, daysC: [2, 3, 4, 5, 6, 7, 5] });
    expect(updateAirLows({ ...lows, todayC: null }, {}, corner, true)).toEqual({ ...lows, todayC: null });
    expect(updateAirLows(lows, {}, corner, false)).toBe(lows);
    expect(updateAirLows(lows, air(0), winter, true)).toBe(lows);
    expect(updateAirLows(lows, air(0), valve, true)).toBe(lows);
  });

  it('tells frost at 4 °C, and that it is near at 8', () => {
    expect([near(8.1), near(8), near(4.1), near(4)]).toEqual([
      ...[
        [false, false],
        [true, false],
        [true, false],
        [true, true],
      ],
    ]);
    expect(near(20, [15, 4, 15])).toEqual([true, true]);
    expect(near(null)).toEqual([false, false]);
    expect(near(0, [], valve)).toEqual([false, false]);
  });

  it('does not count where a season is set: that is near for four weeks', () => {
    expect(near(0, [], winter)).toEqual([false, false]);
    expect(near(20, [], winter, '2031-09-02')).toEqual([false, false]);
    expect(near(20, [], winter, '2031-09-03')).toEqual([true, false]);
    expect(near(20, [], winter, '2031-12-01')).toEqual([true, true]);
    const drained = makeSite('drain-valve', undefined, { frostSeason: winter.frostSeason });
    expect(near(0, [], drained, '2031-12-01')).toEqual([false, false]);
    expect(near(0, [], drained, '2031-09-03')).toEqual([false, false]);
  });
});

describe('the fall of a resting pan', () => {
  const resting = { phase: { name: 'resting', sinceMs: 0 } } as const;
  const fallen = (before: Parameters<typeof updateFall>[0], panOutletC: number | null, more: object = {}) =>
    updateFall(
      before,
      situationOf({
        ...{ state: resting, level: 'full', told: panOutletC === null ? {} : { panOutletC } },
        ...more,
      }),
    );
  const window = { sinceMs: nowMs - 300_000, fromC: 8, fallsKS: [3, 2, 1] };

  it('is measured over five minutes, three times', () => {
    expect(fallen(null, 7)).toEqual({ sinceMs: nowMs, fromC: 7, fallsKS: [] });
    const early = { ...window, sinceMs: nowMs - 299_999 };
    expect(fallen(early, 7)).toBe(early);
    expect(fallen(window, 5)).toEqual({ sinceMs: nowMs, fromC: 5, fallsKS: [2, 1, 0.01] });
  });

  it('is none in another phase, in a pan that is not full, or that cannot be read', () => {
    expect(fallen(window, null)).toBeNull();
    expect(fallen(window, 5, { level: 'part' })).toBeNull();
    expect(fallen(window, 5, { state: { phase: { name: 'emptying', sinceMs: 0 } } })).toBeNull();
  });

  const to = (panOutletC: number, fallsKS: number[], told: Told = {}, site = valve) =>
    fallToFrost(situationOf({ site, told: { panOutletC, ...told } }), { sinceMs: 0, fromC: 9, fallsKS });

  it('leads to frost within twice the drain time of 60 s, by the slowest of three', () => {
    // 6 K in 120 s.
    expect(to(7, [0.05, 0.06, 0.07])).toEqual({ panC: 7, fallKH: 180, dangerMin: 2 });
    expect(to(7, [0.0499, 0.06, 0.07])).toBeNull();
    expect(to(7, [0.06, 0.07])).toBeNull();
    expect(to(7, [0.06, 0, 0.07])).toBeNull();
    expect(to(0.5, [0.06, -0.1, 0.07])).toBeNull();
    expect(to(1, [0.06, 0, 0.07])).toBeNull();
    expect(to(0.5, [0.06, 0.06, 0.07])).toMatchObject({ dangerMin: 0 });
    expect(to(7, [0.06, 0.06, 0.07], {}, corner)).toBeNull();
    expect(fallToFrost(situationOf({ told: { panOutletC: 2 } }), null)).toBeNull();
    const blind = { sinceMs: 0, fromC: 9, fallsKS: [1, 1, 1] };
    expect(fallToFrost(situationOf({ told: {} }), blind)).toBeNull();
  });

  it('is no faster than sky and wind make it: 120 W/m2, and 40 W/m2K to air 5 K colder than it is told', () => {
    const heatJM2K = 0.04 * 4.194e6;
    expect(to(1.1, [1, 1, 1], { ambientC: 1.1 })?.fallKH).toBeCloseTo((3600 * 320) / heatJM2K, 9);
    expect(to(1.1, [1, 1, 1], { ambientC: -3.9 })?.fallKH).toBeCloseTo((3600 * 520) / heatJM2K, 9);
    expect(to(1.05, [1, 1, 1], { ambientC: 6.05 })?.fallKH).toBeCloseTo((3600 * 120) / heatJM2K, 9);
    expect(to(1.05, [1, 1, 1], { ambientC: 20 })?.fallKH).toBeCloseTo((3600 * 120) / heatJM2K, 9);
  });
});

describe('cooling a store by night', () => {
  const settings = { ...situationOf().settings, nightCooling: 1, nightCoolingFloorC: 45, stopDifferenceK: 2 };
  const cools = (given: object = {}, cooling = false) =>
    isCooling(
      situationOf({
        ...{ settings, sunHeightDeg: -5, told: { storeBottomC: 50, panOutletC: 40 } },
        ...{ state: { heat: { ...initial.heat, cooling } } },
        ...given,
      }),
    );
  const store = (storeBottomC: number, panOutletC = 30) => ({ told: { storeBottomC, panOutletC } });
  const frost = (changes: object) => ({ state: { frost: { ...initial.frost, ...changes } } });

  it('begins 5 K above the floor, and ends at it', () => {
    expect([cools(store(50)), cools(store(49.9))]).toEqual([true, false]);
    expect([cools(store(45.1), true), cools(store(45), true)]).toEqual([true, false]);
  });

  it.each([
    ['it is not chosen', { settings: { ...settings, nightCooling: 0 } }],
    ['the store cannot be read', { told: { panOutletC: 30 } }],
    ['the calendar is not known', { sunHeightDeg: null }],
    ['the sun is up', { sunHeightDeg: 1 }],
    ['there was frost', frost({ latched: 'frost-trend' })],
    ['frost is ahead', frost({ nightC: 1 })],
    ['the full pan brings heat', { level: 'full', ...store(50, 52.1) }],
    ['nobody knows what the full pan brings', { level: 'full', told: { storeBottomC: 50 } }],
  ])('is not done when %s', (_, given) => {
    expect(cools(given)).toBe(false);
  });

  it('minds no hot pan that is not full', () => {
    expect([cools({ level: 'full', ...store(50, 52) }), cools({ level: 'part', ...store(50, 60) })]).toEqual([
      ...[true, true],
    ]);
  });

  it('asks for the pump', () => {
    const told = (cooling: boolean, readings: Told) =>
      coolingCommand(
        situationOf({ settings, told: readings, state: { heat: { ...initial.heat, cooling } } }),
      );
    expect(told(true, { storeBottomC: 50 })).toEqual({
      ...{ goal: 'run', urgent: false, by: 'want' },
      cause: { code: 'cooling-store', values: { storeC: 50, nightCoolingFloorC: 45 } },
    });
    expect([told(false, { storeBottomC: 50 }), told(true, {})]).toEqual([null, null]);
  });
});
