import { describe, expect, it } from 'vitest';
import {
  type BarePlate,
  plateConvectionWM2K,
  plateLossWM2K,
  restingPlateC,
} from '../../../../controller/engine/bare-plate.ts';
import { frostNightC, outlastsNight } from '../../../../controller/engine/hazards/frost-night.ts';
import { blackBodyWM2, clearSkyEmissivity, dewPointC } from '../../../../controller/engine/sky.ts';
import { unknownSunClock } from '../../../../controller/engine/sun/clock.ts';
import { sunHeightDeg } from '../../../../controller/engine/sun/position.ts';
import { makeSite, quickSettings } from '../rig.ts';
import { type Given, situationOf, type Told } from '../situations.ts';

const site = makeSite('drain-valve');
const summer = makeSite('drain-valve', undefined, { frostSeason: { from: '10-01', to: '03-31' } });
const jumped = (value: number) => ({ quality: 'doubtful', value, ageMs: 0, cause: 'jumped' }) as const;
const failed = { quality: 'failed', cause: 'missing' } as const;
/** High enough that every night counts. */
const every = { ...quickSettings, frostNightC: 60 };
const tenth = (temperatureC: number) => Math.round(temperatureC * 10) / 10;

/** A black sheet by night under a clear, dry, still sky, but for what is given. */
function plateOf(airC: number, changes: Partial<BarePlate> = {}, dewC = airC - 13): BarePlate {
  const skyWM2 = clearSkyEmissivity(dewC, 10) * blackBodyWM2(airC);
  return { absorbedWM2: 0, emissivity: 0.95, skyWM2, convectionWM2K: 2.8, airC, ...changes };
}

const night = (told: Told, given: Given = {}, before: number | null = null) =>
  frostNightC(situationOf({ site, settings: every, sunHeightDeg: -5, told, ...given }), before);

describe('the sheet under the sky of this night', () => {
  it.each<[string, Told, BarePlate]>([
    ['clear, dry and still', { ambientC: 8 }, plateOf(8)],
    ['damp', { ambientC: 8, humidityFraction: 0.9 }, plateOf(8, {}, dewPointC(8, 0.9))],
    ['doubtfully damp', { ambientC: 8, humidityFraction: jumped(0.9) }, plateOf(8)],
    ['windy', { ambientC: 8, windMs: 4 }, plateOf(8, { convectionWM2K: plateConvectionWM2K(4) })],
    ['doubtfully windy', { ambientC: 8, windMs: jumped(4) }, plateOf(8)],
    ['measured as bright', { ambientC: 8, longWaveWM2: 340 }, plateOf(8, { skyWM2: 340 })],
    ['measured as dark', { ambientC: 8, longWaveWM2: 150 }, plateOf(8, { skyWM2: 150 })],
    ['doubtfully bright', { ambientC: 8, longWaveWM2: jumped(340) }, plateOf(8)],
    ['doubtfully dark', { ambientC: 8, longWaveWM2: jumped(150) }, plateOf(8, { skyWM2: 150 })],
    ['of a sensor that failed', { ambientC: 8, longWaveWM2: failed }, plateOf(8)],
  ])('where it is %s, falls as low as it does', (_, told, plate) => {
    expect(night(told)).toBe(tenth(restingPlateC(plate)));
  });

  it.each<[string, Told, Given, number | null]>([
    ['without a sensor, in season', {}, {}, 0],
    ['that failed, in season', { ambientC: failed }, {}, 0],
    ['that failed, out of season', { ambientC: failed }, { site: summer }, null],
    ['without a sensor, out of season', {}, { site: summer }, null],
    ['doubtfully warm, in season', { ambientC: jumped(20) }, {}, 0],
    ['doubtfully cold, in season', { ambientC: jumped(-5) }, {}, -5],
    ['doubtfully warm, out of season', { ambientC: jumped(20) }, { site: summer }, 20],
    ['well measured, out of season', { ambientC: 20 }, { site: summer }, 20],
    ['well measured, in season', { ambientC: 20 }, {}, 20],
  ])('has air %s', (_, told, given, airC) => {
    expect(night(told, given)).toBe(airC === null ? null : tenth(restingPlateC(plateOf(airC))));
  });

  it('is none by day', () => {
    expect(night({ ambientC: 8 }, { sunHeightDeg: 5 })).toBeNull();
  });

  it('is of frost from the set temperature on, and until 1 K above it', () => {
    const sheetC = tenth(restingPlateC(plateOf(8)));
    const limit = (aboveK: number, before: number | null) =>
      night({ ambientC: 8 }, { settings: { ...every, frostNightC: sheetC + aboveK } }, before);
    expect([limit(0, null), limit(-0.01, null)]).toEqual([sheetC, null]);
    expect([limit(-1, 0), limit(-1.01, 0)]).toEqual([sheetC, null]);
  });
});

describe('a full pan in such a night', () => {
  const told = { ambientC: 4, windMs: 1 };
  const plate = plateOf(4, { convectionWM2K: plateConvectionWM2K(1) });
  const sheetC = -2;

  /** Where the water ends: it cools towards the sheet by its heat over the loss half way. */
  function endsC(panC: number, forS: number, heatJM2K = 0.04 * 4.194e6): number {
    const constantS = heatJM2K / plateLossWM2K(plate, (panC + sheetC) / 2);
    return tenth(sheetC + (panC - sheetC) * Math.exp(-forS / constantS));
  }

  const outlasts = (panOutletC: number, given: Given = {}) =>
    outlastsNight(situationOf({ site, level: 'full', told: { ...told, panOutletC }, ...given }), sheetC);

  function expectEndOf(forS: number, given: Given, depthM = 0.04) {
    const pans = Array.from({ length: 1100 }, (_, index) => 4 + index / 20);
    const warm = pans.map((panC) => endsC(panC, forS, depthM * 4.194e6) > 4);
    expect(pans.filter((panC) => outlasts(panC, given))).toEqual(pans.filter((_, index) => warm[index]));
    expect(new Set(warm)).toEqual(new Set([false, true]));
  }

  it('ends it above the frost temperature or not, an hour and twice the drain time on where nobody knows', () => {
    expectEndOf(3720, {});
    const settings = { ...quickSettings, drainTimeS: 900 };
    expectEndOf(5400, { settings });
  });

  it('lasts longer where its water is deeper', () => {
    const deep = { ...site, pan: { ...site.pan, waterDepthM: 0.08 } };
    expectEndOf(3720, { site: deep }, 0.08);
  });

  const at = (atMs: number): Given => ({ state: { sunClock: { ...unknownSunClock, atMs } } });
  /** Midnight of the shortest night at 30 degrees west. */
  const midnightMs = Date.UTC(2031, 5, 22, 2);

  it('waits for the sun, as it is looked for every two hours', () => {
    const heights = [2, 4, 6].map((hours) => sunHeightDeg(midnightMs + hours * 3_600_000, site.location));
    expect(heights.map((height) => height < 0)).toEqual([true, true, false]);
    expectEndOf(6 * 3600, at(midnightMs));
    expectEndOf(2 * 3600, at(midnightMs + 4 * 3_600_000));
  });

  it('counts the sun on the horizon as up', () => {
    let sunriseMs = midnightMs;
    while (sunHeightDeg(sunriseMs, site.location) < 0) sunriseMs += 1000;
    expect(Math.abs(sunHeightDeg(sunriseMs, site.location))).toBe(0);
    expectEndOf(2 * 3600, at(sunriseMs - 2 * 3_600_000));
  });

  it('lasts twenty hours at most', () => {
    const far = { ...site, location: { ...site.location, latitudeDeg: 80 } };
    const winterMs = Date.UTC(2031, 11, 21, 2);
    // A time constant that leaves something to be seen after that time.
    const deep = { ...far, pan: { ...far.pan, waterDepthM: 0.4 } };
    expectEndOf(20 * 3600, { ...at(winterMs), site: deep }, 0.4);
  });

  it.each<[string, Given]>([
    ['that is not full', { level: 'part' }],
    ['that cannot be read', { told }],
    ['of which a sensor is doubtful', { told: { ...told, panOutletC: 50, panSheetC: jumped(50) } }],
    ['under air that nobody knows', { site: summer, told: { panOutletC: 50 } }],
  ])('is not trusted to last %s', (_, given) => {
    expect([outlasts(50), outlasts(50, given)]).toEqual([true, false]);
  });
});
