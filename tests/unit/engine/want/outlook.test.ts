import { describe, expect, it } from 'vitest';
import type { HarvestMemory } from '../../../../controller/engine/state.ts';
import { initialState } from '../../../../controller/engine/state.ts';
import { clearSkyWM2, sunHeightDeg } from '../../../../controller/engine/sun/position.ts';
import { unsureW } from '../../../../controller/engine/want/net-gain.ts';
import { noHarvest, updateHarvest } from '../../../../controller/engine/want/outlook.ts';
import { refillCostJ } from '../../../../controller/engine/want/refill.ts';
import { makeSite } from '../rig.ts';
import { nowMs, type Told as Readings } from '../situations.ts';
import { given, type Told } from './wants.ts';

const hourMs = 3_600_000;
const site = makeSite('drain-valve');
const areaM2 = 10.2;
/** The sun at this height gives 100 W/m2 of a clear sky. */
const hundredDeg = 7.999_12;

const outlook = (told: Told, gainW: number | null = null): HarvestMemory => updateHarvest(given(told), gainW);

describe('a dry sheet', () => {
  const dry = (told: Readings, changes: Told = {}) =>
    outlook({ level: 'empty', told, elapsedMs: 400_000, ...changes });

  it('has a mean over some seven minutes while the pan is empty', () => {
    expect(dry({ panSheetC: 30 }).dryC).toBe(30);
    expect(dry({ panSheetC: 30 }, { harvest: { dryC: 20 } }).dryC).toBe(25);
    expect(dry({ panSheetC: 30 }, { harvest: { dryC: 20 }, level: 'part' }).dryC).toBeNull();
    expect(dry({}, { harvest: { dryC: 20 } }).dryC).toBeNull();
  });

  it('takes in what it loses at that temperature', () => {
    const told = { panSheetC: 30, ambientC: 20 };
    expect(dry(told)).toMatchObject({
      dryTakenWM2: 10 * 18.5 + 60,
      dryClearWM2: clearSkyWM2(40),
      drySteady: true,
    });
    expect(dry({ panSheetC: 30 }, { sunHeightDeg: null })).toMatchObject({
      dryTakenWM2: null,
      dryClearWM2: 0,
    });
    const kept = { dryTakenWM2: 7, dryClearWM2: 8, drySteady: true };
    expect(dry(told, { level: 'full', harvest: kept })).toMatchObject(kept);
  });

  it('is steady within two kelvins of its mean', () => {
    const steady = (panSheetC: number) => dry({ panSheetC }, { harvest: { dryC: 20 } }).drySteady;
    expect([24, 24.01, 16, 15.99].map(steady)).toEqual([true, false, true, false]);
  });
});

describe('how clear the day was', () => {
  const bright = clearSkyWM2(40);
  const clear = (told: Told, gainW: number | null = null) =>
    outlook({ elapsedMs: hourMs, ...told }, gainW).clearFraction;
  const sun = (irradianceWM2: number, changes: Told = {}) =>
    clear({ told: { irradianceWM2 }, harvest: { clearFraction: 0.2 }, ...changes });

  it('follows the light within an hour', () => {
    expect(sun(0.6 * bright)).toBeCloseTo(0.4, 12);
    expect(sun(0)).toBeCloseTo(0.1, 12);
    expect([sun(1.1 * bright), sun(2 * bright)]).toEqual(
      [0.65, 0.65].map((value) => expect.closeTo(value, 12)),
    );
  });

  it('goes back to the usual by night within six', () => {
    const night = { elapsedMs: 6 * hourMs };
    expect(sun(0, { ...night, sunHeightDeg: null })).toBeCloseTo(0.45, 12);
    expect(sun(900, { ...night, sunHeightDeg: hundredDeg - 0.1 })).toBeCloseTo(0.45, 12);
    expect(sun(20, { sunHeightDeg: hundredDeg })).toBeCloseTo(0.2, 12);
  });

  it('is told by the pan where no sensor sees the light', () => {
    const share = (takenWM2: number) => 0.1 + takenWM2 / 0.9 / bright / 2;
    const harvest = { clearFraction: 0.2 };
    const dry = { level: 'empty', told: { panSheetC: 25, panOutletC: 99, ambientC: 20 }, harvest } as const;
    const wet = { level: 'full', told: { panOutletC: 25, panSheetC: 99, ambientC: 20 }, harvest } as const;
    expect(clear({ ...dry, told: { panSheetC: 25, ambientC: 20 } }, 4000)).toBeCloseTo(
      share(5 * 18.5 + 60),
      12,
    );
    expect(clear(dry)).toBeCloseTo(share(5 * 18.5 + 60), 12);
    expect(clear(wet, 2040)).toBeCloseTo(share(200 + 5 * 18.5 + 60), 12);
    expect(clear(wet, -40_000)).toBeCloseTo(0.1, 12);
  });

  it.each<[string, Told, number | null]>([
    ['the air', { level: 'empty', told: { panSheetC: 25 } }, 2000],
    ['the sheet', { level: 'empty', told: { ambientC: 20 } }, 2000],
    ['the pan', { level: 'full', told: { ambientC: 20 } }, 2000],
    ['its gain', { level: 'full', told: { panOutletC: 25, ambientC: 20 } }, null],
  ])('stays as it was without %s', (_what, told, gainW) => {
    expect(clear({ ...told, harvest: { clearFraction: 0.2 } }, gainW)).toBe(0.2);
  });
});

describe('the heat that a full pan lost', () => {
  const loss = (gainW: number | null, harvest: Partial<HarvestMemory>, changes: Told = {}) => {
    const { lostJ, inGap, gaps } = outlook({ level: 'full', elapsedMs: 5000, harvest, ...changes }, gainW);
    return [lostJ, inGap, gaps];
  };
  const tenthJ = 0.1 * refillCostJ(given({ level: 'full' }));

  it('adds up, and goes down to nought when it is gained back', () => {
    expect(loss(-100, { lostJ: 300 })).toEqual([800, false, 0]);
    expect(loss(20, { lostJ: 300 })).toEqual([200, false, 0]);
    expect(loss(60, { lostJ: 300 })).toEqual([0, false, 0]);
    expect(loss(100, { lostJ: 300 })).toEqual([0, false, 0]);
  });

  it('becomes a gap in the sun from a tenth of a refill on, which counts when it is gained back', () => {
    expect(loss(-100, { lostJ: tenthJ - 500.1, gaps: 1 })[1]).toBe(false);
    expect(loss(-100, { lostJ: tenthJ - 500, gaps: 1 })).toEqual([tenthJ, true, 1]);
    expect(loss(20, { lostJ: 300, inGap: true, gaps: 1 })).toEqual([200, true, 1]);
    expect(loss(60, { lostJ: 300, inGap: true, gaps: 1 })).toEqual([0, false, 2]);
  });

  it('is kept while nothing tells, and forgotten with the water', () => {
    expect(loss(null, { lostJ: 300, inGap: true, gaps: 1 })).toEqual([300, true, 1]);
    expect(loss(-100, { lostJ: 300, inGap: true, gaps: 1 }, { level: 'part' })).toEqual([0, false, 1]);
  });

  it('counts no more than what the sensors are sure of', () => {
    const state = { outputs: { ...initialState().outputs, pumpFraction: 1 } };
    const harvest = { ...noHarvest, lostJ: 9e6 };
    const doubtJ = 5 * unsureW(given({ state }));
    expect(doubtJ).toBeGreaterThan(1000);
    expect(loss(0, {}, { state: { ...state, harvest } })[0]).toBeCloseTo(9e6 - doubtJ, 6);
    expect(loss(null, {}, { state: { ...state, harvest } })[0]).toBe(9e6);
  });
});

describe('the day ahead', () => {
  /** Noon of the first day of summer at 30 degrees west. */
  const noonMs = Date.UTC(2031, 5, 21, 14);
  const ahead = (
    atMs: number | null,
    told: Readings = { storeBottomC: 20, ambientC: 15 },
    changes: Told = {},
  ) =>
    outlook({
      told,
      ...changes,
      state: { sunClock: { atMs, apartMs: null, apartSinceMs: 0 }, ...changes.state },
    });
  const { location } = site;

  /** What slices of half an hour bring, each by the sun of its middle. */
  function gainedJ(atMs: number, slices: number, clear: number, lossWM2: number, place = location): number {
    let sumJ = 0;
    for (let slice = 0; slice < slices; slice++) {
      const height = sunHeightDeg(atMs + (slice + 0.5) * 1_800_000, place);
      sumJ += Math.max(0, 0.9 * clear * clearSkyWM2(height) - lossWM2) * areaM2 * 1800;
    }
    return sumJ;
  }

  it('brings what a sky as clear as so far gives, less what the sheet loses', () => {
    const { hourJ, dayJ, clearFraction } = ahead(noonMs);
    const lossWM2 = 5 * 18.5 + 60;
    expect(hourJ).toBeCloseTo(gainedJ(noonMs, 2, clearFraction, lossWM2), 3);
    expect(dayJ).toBeCloseTo(gainedJ(noonMs, 20, clearFraction, lossWM2), 3);
    const blind = ahead(noonMs, { storeBottomC: 20 });
    expect(blind.hourJ).toBeCloseTo(gainedJ(noonMs, 2, blind.clearFraction, 60), 3);
  });

  it('looks no further than a day where the sun does not set', () => {
    const place = { ...location, latitudeDeg: 80 };
    const { dayJ, clearFraction } = ahead(
      noonMs,
      { storeBottomC: 0, ambientC: 0 },
      { site: { ...site, location: place } },
    );
    expect(dayJ).toBeCloseTo(gainedJ(noonMs, 48, clearFraction, 60, place), 2);
  });

  it('ends with the sun at the horizon, however warm the air', () => {
    let setMs = noonMs;
    while (sunHeightDeg(setMs, location) > 0) setMs += 1000;
    expect(Math.abs(sunHeightDeg(setMs, location))).toBe(0);
    const warm = { storeBottomC: 0, ambientC: 40 };
    expect(ahead(setMs - 900_000, warm)).toMatchObject({ hourJ: 0, dayJ: 0 });
    expect(ahead(setMs - 902_000 - 120_000, warm).hourJ).toBeGreaterThan(0);
  });

  it('tells by how much the light will rise in half an hour', () => {
    const light = (ms: number) => clearSkyWM2(sunHeightDeg(ms, location));
    const morningMs = noonMs - 4 * hourMs;
    expect(ahead(morningMs).risingWM2).toBe(light(morningMs + 1_800_000) - light(morningMs));
    expect(ahead(morningMs).risingWM2).toBeGreaterThan(50);
  });

  it('is not known without a calendar or a store', () => {
    const unknown = { risingWM2: 0, hourJ: null, dayJ: null };
    expect(ahead(null)).toMatchObject(unknown);
    expect(ahead(noonMs, { ambientC: 15 })).toMatchObject(unknown);
    const known = { state: { harvest: { ...noHarvest, risingWM2: 5, hourJ: 6, dayJ: 7 } } };
    expect(ahead(noonMs, { ambientC: 15 }, known)).toMatchObject(unknown);
  });

  it('is looked at once a minute', () => {
    const looked = (lookedMs: number | null, runMs = nowMs) => {
      const harvest = { ...noHarvest, lookedMs, hourJ: 7 };
      const next = ahead(noonMs, { storeBottomC: 20 }, { runMs, state: { harvest } });
      return [next.lookedMs, next.hourJ === 7];
    };
    expect(looked(nowMs - 59_999)).toEqual([nowMs - 59_999, true]);
    expect(looked(nowMs - 60_000)).toEqual([nowMs, false]);
    expect(looked(null, 1000)).toEqual([1000, false]);
  });

  it('keeps the gain of the pan', () => {
    expect(outlook({}, 123)).toMatchObject({ gainW: 123 });
  });
});
