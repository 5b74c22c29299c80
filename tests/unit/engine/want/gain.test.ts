import { describe, expect, it } from 'vitest';
import { panHeatJK } from '../../../../controller/engine/pan.ts';
import { factsOf } from '../../../../controller/engine/sense/facts.ts';
import { initialState, unknownWater, type WaterLevel } from '../../../../controller/engine/state.ts';
import { clearSkyWM2 } from '../../../../controller/engine/sun/position.ts';
import { cannotGain, dryGainW, lossWM2K } from '../../../../controller/engine/want/collector.ts';
import { netGainW, unsureW } from '../../../../controller/engine/want/net-gain.ts';
import { trendKS, updateTrend } from '../../../../controller/engine/want/trend.ts';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import { makeSite } from '../rig.ts';
import type { Told as Readings } from '../situations.ts';
import { given, type Told } from './wants.ts';

const site = makeSite('drain-valve');
const reservoir = { ...site, plumbing: 'reservoir' } as const;
const jumped = (value: number) => ({ quality: 'doubtful', value, ageMs: 0, cause: 'jumped' }) as const;
/** The sun at this height gives 100 W/m2 of a clear sky. */
const hundredDeg = 7.999_12;

const pumping = (pumpFraction: number, learnt = {}) => ({
  outputs: { ...initialState().outputs, pumpFraction },
  learnt,
});

describe('the trend of a pan', () => {
  const facts = (panOutletC?: number) =>
    factsOf(
      panOutletC === undefined ? {} : { panOutletC: { quality: 'good', value: panOutletC, ageMs: 0 } },
      {},
    );
  const trend = (level: WaterLevel, panC: number | undefined, trendC: number | null) =>
    updateTrend({ ...unknownWater, level, trendC }, facts(panC), 300_000).trendC;

  it('is behind a low-pass of five minutes while there is water', () => {
    expect([trend('full', 30, 20), trend('unknown', 30, 20), trend('full', 30, null)]).toEqual([25, 25, 30]);
    expect([trend('empty', 30, 20), trend('part', 30, 20), trend('full', undefined, 20)]).toEqual([
      null,
      null,
      null,
    ]);
    const before = { ...unknownWater, level: 'full', trendC: 30 } as const;
    expect(updateTrend(before, facts(30), 5000)).toBe(before);
    expect(updateTrend(before, facts(31), 5000)).toMatchObject({ level: 'full' });
  });

  it('is what the pan stands off it', () => {
    const at = (trendC: number | null, told: Readings) =>
      trendKS(given({ told, state: { water: { ...unknownWater, trendC } } }));
    expect([at(20, { panOutletC: 26 }), at(26, { panOutletC: 20 })]).toEqual([0.02, -0.02]);
    expect([at(null, { panOutletC: 26 }), at(20, {})]).toEqual([null, null]);
    expect(Object.is(at(20, { panOutletC: 20 }), 0)).toBe(true);
    expect(Object.is(at(0, { panOutletC: -0 }), 0)).toBe(true);
  });
});

describe('the net gain of a pan', () => {
  const gain = (heatRateW: number | null, told: Readings, water = {}, state = {}) =>
    netGainW(
      given({ told, state: { ...state, water: { ...unknownWater, level: 'full', trendC: 20, ...water } } }),
      heatRateW,
    );

  it('is what its water takes up and what comes home', () => {
    const told = { panOutletC: 26, storeBottomC: 20 };
    const takenW = panHeatJK(site, 26) * 0.02;
    expect(gain(500, told)).toBeCloseTo(takenW + 500, 6);
    expect(gain(500, { panOutletC: 26 })).toBeCloseTo(takenW + 500, 6);
    const roughW = streamHeatW(0.5 * 20, 26, 20, 20);
    expect(gain(null, told, {}, pumping(0.5))).toBeCloseTo(takenW + roughW, 6);
    expect(Object.is(gain(0, { panOutletC: 20 }), 0)).toBe(true);
  });

  it.each<[string, number | null, Readings, object]>([
    ['in a pan that is not full', 500, { panOutletC: 26 }, { level: 'part' }],
    ['without the pan', 500, { storeBottomC: 20 }, {}],
    ['without a trend', 500, { panOutletC: 26 }, { trendC: null }],
    ['without the store', null, { panOutletC: 26 }, {}],
    ['without anything', null, { storeBottomC: 20 }, {}],
  ])('is not known %s', (_when, heatRateW, told, water) => {
    expect(gain(heatRateW, told, water)).toBeNull();
  });

  it('may be wrong by what its sensors are known to', () => {
    const unsure = (told: Readings, learnt = {}, pumpFraction = 0.5) =>
      unsureW(given({ told, state: pumping(pumpFraction, learnt) }));
    const by = (sdK: number) => streamHeatW(10, 20 + sdK, 20, 20);
    const pair = { outletOffsetK: 0, outletOffsetSdK: 0.2 };
    const ends = { panOutletC: 30, panInletC: 20 };
    expect(unsure({}, {}, 0)).toBe(0);
    expect(unsure({}, pair)).toBe(by(0.2));
    expect(unsure({ panOutletC: 30 }, { ...pair, endsOffsetK: 0 })).toBe(by(0.2));
    expect(unsure({ panInletC: 30 }, { ...pair, endsOffsetK: 0 })).toBe(by(0.2));
    expect([unsure(ends, pair), unsure(ends, { ...pair, endsOffsetK: 0 })]).toEqual([by(1), by(0.3)]);
    expect(unsure({ ...ends, panInletC: jumped(20) }, pair)).toBe(by(0.2));
  });
});

describe('a bare sheet', () => {
  it('loses more to the wind', () => {
    const loss = (told: Readings) => lossWM2K(given({ told }));
    expect([loss({ windMs: 0 }), loss({ windMs: 4 }), loss({}), loss({ windMs: jumped(4) })]).toEqual([
      11.5, 25.5, 18.5, 18.5,
    ]);
  });

  it('cannot gain when the best of them would lose under a clear sky', () => {
    const cannot = (told: Readings, sunHeightDeg: number | null = 5) =>
      cannotGain(given({ told, sunHeightDeg }));
    const evenC = (0.96 * clearSkyWM2(5)) / 8;
    expect([
      cannot({ panOutletC: evenC, ambientC: 0 }),
      cannot({ panOutletC: evenC + 0.001, ambientC: 0 }),
    ]).toEqual([false, true]);
    expect(cannot({ panOutletC: 20 + evenC + 0.001, ambientC: 20 })).toBe(true);
    expect(cannot({ panOutletC: 90, ambientC: -9 }, null)).toBe(false);
    expect([cannot({ panOutletC: 90 }), cannot({ ambientC: -9 })]).toEqual([false, false]);
  });

  it('would gain by what it stands above the water that fills the pan', () => {
    const gain = (told: Readings, changes: Told = {}) =>
      dryGainW(given({ told, harvest: { dryC: 50 }, ...changes }));
    const store = { storeBottomC: 20, storeTopC: 40 };
    const by = (sourceC: number) => 10.2 * 18.5 * (50 - sourceC);
    expect(gain(store)).toBeCloseTo(by(20), 9);
    expect([gain(store, { harvest: {} }), gain({})]).toEqual([null, null]);
    expect(gain(store, { sunHeightDeg: null })).toBeCloseTo(by(40), 9);
    expect(clearSkyWM2(hundredDeg)).toBe(100);
    expect(gain(store, { sunHeightDeg: hundredDeg })).toBeCloseTo(by(20), 9);
    expect(gain(store, { sunHeightDeg: hundredDeg - 0.1 })).toBeCloseTo(by(40), 9);
  });

  it('would gain by what it stands above the reservoir where that is warmer', () => {
    const gain = (reservoirC: number, ofSite: typeof site = reservoir) =>
      dryGainW(given({ site: ofSite, told: { storeBottomC: 20, reservoirC }, harvest: { dryC: 50 } }));
    const by = (sourceC: number) => 10.2 * 18.5 * (50 - sourceC);
    expect(gain(30)).toBeCloseTo(by(30), 9);
    expect(gain(10)).toBeCloseTo(by(20), 9);
    expect(gain(30, site)).toBeCloseTo(by(20), 9);
    const told = { reservoirC: 30 };
    expect(dryGainW(given({ site: reservoir, told, harvest: { dryC: 50 } }))).toBeNull();
    const doubtful = { reservoirC: jumped(30), storeBottomC: -20 };
    expect(dryGainW(given({ site: reservoir, told: doubtful, harvest: { dryC: 50 } }))).toBeCloseTo(
      by(-20),
      9,
    );
  });
});
