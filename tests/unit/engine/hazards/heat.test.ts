import { describe, expect, it } from 'vitest';
import {
  comesHomeFraction,
  fullStoreGoal,
  linerHotC,
  storeLimitC,
  updateHeat,
} from '../../../../controller/engine/hazards/heat.ts';
import { type EngineState, initialState } from '../../../../controller/engine/state.ts';
import { makeSite, quickSettings } from '../rig.ts';
import { type Given, situationOf, type Told } from '../situations.ts';

type Heat = EngineState['heat'];

const calm = initialState().heat;
const site = makeSite('drain-valve');
const failed = { quality: 'failed', cause: 'missing' } as const;
const update = (told: Told, heat: Partial<Heat> = {}, given: Given = {}) =>
  updateHeat(situationOf({ told, ...given, state: { heat: { ...calm, ...heat } } }));

describe('the limits of heat', () => {
  it('are the lower of what is set and what the store stands, and a margin below the liner', () => {
    const at = (limitC: number) => storeLimitC(site, { ...quickSettings, storeLimitC: limitC });
    expect([at(79), at(81)]).toEqual([79, 80]);
    expect(linerHotC(site, { ...quickSettings, linerMarginK: 10 })).toBe(70);
  });

  it('count what comes home with the stop of the pump', () => {
    expect(comesHomeFraction(site)).toBeCloseTo(0.3, 12);
    const free = makeSite('pump-stop');
    expect(comesHomeFraction(free)).toBeCloseTo(0.5, 12);
    expect(comesHomeFraction({ ...free, plumbing: 'reservoir' })).toBeCloseTo(0.3, 12);
    expect(comesHomeFraction({ ...free, store: { ...free.store, volumeL: 300 } })).toBe(1);
  });
});

describe('a store', () => {
  const isFull = (told: Told, storeFull = false, given: Given = {}) =>
    update(told, { storeFull }, given).storeFull;
  const top = (storeTopC: number) => ({ storeBottomC: 20, storeTopC });

  it('is full from its limit on, until it has cooled by the release', () => {
    expect([isFull(top(60)), isFull(top(59.99)), isFull(top(57), true), isFull(top(56.99), true)]).toEqual([
      ...[true, false, true, false],
    ]);
    expect([isFull({}, true), isFull({}, false)]).toEqual([true, false]);
  });

  it('counts the share that still comes home from a full pan', () => {
    // 57 °C and 0.3 of the 10 K to the pan.
    const full: Given = { level: 'full' };
    const under = (panOutletC: number, given = full) => isFull({ ...top(57), panOutletC }, false, given);
    expect([under(67), under(66.9), under(67, { level: 'part' })]).toEqual([true, false, false]);
    expect(isFull({ ...top(60), panOutletC: 20 }, false, full)).toBe(true);
    expect(isFull(top(60), false, full)).toBe(true);
    expect([isFull({ panOutletC: 90 }, false, full), isFull({ panOutletC: 10 }, true, full)]).toEqual([
      ...[false, true],
    ]);
  });

  it('of which nothing tells the top is taken to be as hot as what returns to it', () => {
    const under = (panOutletC: number, more: Told = {}) =>
      isFull({ storeBottomC: 20, panOutletC, ...more }, false, { level: 'full' });
    expect([under(60), under(59.9), under(60, { storeTopC: failed })]).toEqual([true, false, true]);
    expect(under(60, { storeTopC: 25 })).toBe(false);
  });
});

describe('a liner', () => {
  const isHot = (told: Told, linerHot = false) => update(told, { linerHot }).linerHot;

  it('is hot from its margin on, until it is 3 K below', () => {
    const pan = (panSheetC: number) => ({ panOutletC: 20, panSheetC });
    expect([isHot(pan(72)), isHot(pan(71.99)), isHot(pan(69), true), isHot(pan(68.99), true)]).toEqual([
      ...[true, false, true, false],
    ]);
    expect([isHot({}, true), isHot({}, false)]).toEqual([true, false]);
  });
});

describe('the memory of heat', () => {
  const told = { panOutletC: 30, storeBottomC: 20 };

  it('is left alone where nothing changed', () => {
    const situation = situationOf({ told, state: { heat: calm } });
    expect(updateHeat(situation)).toBe(calm);
  });

  it('takes up one change alone', () => {
    expect(update({ storeBottomC: 60 })).toEqual({ ...calm, storeFull: true });
    expect(update({ panSheetC: 72, storeBottomC: 20 })).toEqual({ ...calm, linerHot: true });
    expect(update(told, { cooling: true })).toEqual(calm);
  });
});

describe('a store under an empty pan', () => {
  const strong = { ...site, pan: { ...site.pan, linerLimitC: 120 } };
  const isFull = (storeTopC: number, given: Given) =>
    update({ storeBottomC: 20, storeTopC }, { storeFull: true }, given).storeFull;

  it('takes heat again as soon as it is below its limit, where the liner stands no dry sheet', () => {
    const empty: Given = { level: 'empty' };
    expect([isFull(60, empty), isFull(59.99, empty)]).toEqual([true, false]);
    expect([isFull(57, { ...empty, site: strong }), isFull(56.99, { ...empty, site: strong })]).toEqual([
      ...[true, false],
    ]);
    expect([isFull(59.99, { level: 'part' }), isFull(59.99, { level: 'full' })]).toEqual([true, true]);
  });

  it('is not hurried after a fill that failed', () => {
    const heat = { ...calm, storeFull: true };
    const failure = { ...initialState().failure, count: 1 };
    const told = { storeBottomC: 20, storeTopC: 59.99 };
    expect(updateHeat(situationOf({ told, level: 'empty', state: { heat, failure } })).storeFull).toBe(true);
  });
});

describe('the pan under a full store', () => {
  const emptied = { ...quickSettings, emptyWhenStoreFull: 1 };
  const strong = { ...site, pan: { ...site.pan, linerLimitC: 120 } };
  const reservoir = { ...strong, plumbing: 'reservoir' } as const;
  const losingMs = (ms: number) => ({ timers: { ...initialState().timers, losingMs: ms } });
  /** A pan that is so much warmer than the store's hottest part. */
  const goal = (aboveK: number | null, given: Given = {}) =>
    fullStoreGoal(
      situationOf({
        ...{ settings: emptied, site: strong },
        told:
          aboveK === null ? { panOutletC: 50 } : { panOutletC: 50 + aboveK, storeTopC: 50, storeBottomC: 20 },
        ...given,
      }),
    );

  it('rests where nothing else is set, until it was seen losing heat for three minutes', () => {
    const set = { settings: quickSettings, runMs: 1_000_000 };
    expect([goal(0), goal(0, set)]).toEqual(['empty', 'rest']);
    const since = (ms: number) => goal(0, { ...set, state: losingMs(1_000_000 - ms) });
    expect([since(180_000), since(179_999)]).toEqual(['empty', 'rest']);
    const cools = { ...set, settings: { ...quickSettings, nightCooling: 1 }, state: losingMs(0) };
    expect([goal(0, cools), goal(0, { ...cools, settings: { ...emptied, nightCooling: 1 } })]).toEqual([
      ...['rest', 'empty'],
    ]);
  });

  it("rests while it is warmer than the store's hottest, or nobody knows", () => {
    expect([goal(-29), goal(0.01), goal(null)]).toEqual(['empty', 'rest', 'rest']);
    expect(goal(0, { told: { storeTopC: 50, storeBottomC: 20 } })).toBe('rest');
    expect(goal(0, { told: { panOutletC: -5 } })).toBe('rest');
    expect([goal(0.01, { site: reservoir }), goal(null, { site: reservoir })]).toEqual(['empty', 'empty']);
  });

  it('rests by day where the liner does not stand a dry sheet', () => {
    expect([goal(0, { site }), goal(0, { site, sunHeightDeg: -5 })]).toEqual(['rest', 'empty']);
  });

  it('empties in the afternoon once the liner stands half again as much as a clear sky gives', () => {
    // 80 °C are reached under 797 W/m2; two thirds of that are a clear sky with the sun at 32.7 degrees.
    const turning = (risingWM2: number) => ({ harvest: { ...initialState().harvest, risingWM2 } });
    const at = (sunHeightDeg: number, risingWM2 = -1) =>
      goal(0, { site, sunHeightDeg, state: turning(risingWM2) });
    expect([at(32.5), at(32.9), at(32.5, 0), at(32.5, 1)]).toEqual(['empty', 'rest', 'rest', 'rest']);
    const lit = { storeTopC: 50, storeBottomC: 20, panOutletC: 50, irradianceWM2: 300 };
    expect(goal(0, { site, sunHeightDeg: null, state: turning(-1), told: lit })).toBe('rest');
  });
});
