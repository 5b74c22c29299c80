import { describe, expect, it } from 'vitest';
import {
  type BarePlate,
  plateConvectionWM2K,
  plateGainWM2,
  plateLossWM2K,
  restingPlateC,
} from '../../../controller/engine/bare-plate.ts';
import { blackBodyWM2, clearSkyEmissivity, dewPointC } from '../../../controller/engine/sky.ts';
import { dryStagnationC, mayStandDry, wetStagnationC } from '../../../controller/engine/stagnation.ts';
import { makeSite } from './rig.ts';

describe('the dew point', () => {
  it('is the air itself where that is saturated, to a thousandth', () => {
    expect([-20, 0, 20.1234].map((airC) => dewPointC(airC, 1))).toEqual([-20, 0, 20.123]);
  });

  it('is that at which the Magnus form gives the same vapour pressure', () => {
    const pressure = (c: number) => Math.exp((17.62 * c) / (243.12 + c));
    for (const [airC, humidity] of [
      [20, 0.5],
      [-5, 0.8],
      [35, 0.1],
    ] as const)
      expect(pressure(dewPointC(airC, humidity)) / pressure(airC) / humidity).toBeCloseTo(1, 4);
  });

  it('takes less than a hundredth for a hundredth', () => {
    expect(dewPointC(20, 0.001)).toBe(dewPointC(20, 0.01));
    expect(dewPointC(20, 0.02)).toBeGreaterThan(dewPointC(20, 0.01));
  });
});

describe('the emissivity of a clear sky', () => {
  it('is that of Berdahl and Martin, without the daily term', () => {
    expect(clearSkyEmissivity(0, 0)).toBeCloseTo(0.711 + 0.00012 * 13.25, 12);
    expect(clearSkyEmissivity(10, 0)).toBeCloseTo(0.711 + 0.056 + 0.0073 + 0.00012 * 13.25, 12);
    expect(clearSkyEmissivity(-10, 0)).toBeCloseTo(0.711 - 0.056 + 0.0073 + 0.00012 * 13.25, 12);
    // In the height of 8434 m the pressure is an e-th.
    expect(clearSkyEmissivity(0, 8434)).toBeCloseTo(0.711 + 0.00012 * (1013.25 / Math.E - 1000), 12);
  });

  it('takes the nearest dew point that was measured', () => {
    expect([clearSkyEmissivity(-30, 0), clearSkyEmissivity(40, 0)]).toEqual([
      clearSkyEmissivity(-20, 0),
      clearSkyEmissivity(30, 0),
    ]);
    expect(clearSkyEmissivity(-20, 0)).toBeLessThan(clearSkyEmissivity(-19, 0));
    expect(clearSkyEmissivity(30, 0)).toBeGreaterThan(clearSkyEmissivity(29, 0));
  });
});

describe('a bare plate', () => {
  const plate: BarePlate = { absorbedWM2: 500, emissivity: 0.5, skyWM2: 300, convectionWM2K: 6, airC: 20 };

  it('gains what it takes up, less what it radiates and what the air takes', () => {
    expect(plateGainWM2(plate, 40)).toBeCloseTo(500 + 0.5 * (300 - blackBodyWM2(40)) - 6 * 20, 9);
    expect(plateLossWM2K(plate, 40)).toBeCloseTo((2 * blackBodyWM2(40)) / 313.15 + 6, 9);
  });

  it('rests where it gains nothing', () => {
    for (const absorbedWM2 of [0, 500, 1100])
      expect(plateGainWM2(plate, restingPlateC({ ...plate, absorbedWM2 })) - 500 + absorbedWM2).toBeCloseTo(
        0,
        9,
      );
  });

  it('loses 2.8 W/m2K to still air and 3 more with each metre a second', () => {
    expect([0, 1, 2.5].map(plateConvectionWM2K)).toEqual([2.8, 5.8, 10.3]);
  });
});

describe('a hot, still day', () => {
  const site = makeSite('drain-valve');
  const of = (changes: Partial<typeof site.pan>) => ({ ...site, pan: { ...site.pan, ...changes } });
  const sunny = (sunWM2: number): BarePlate => ({
    absorbedWM2: 0.95 * sunWM2,
    emissivity: 0.95,
    skyWM2: blackBodyWM2(15),
    convectionWM2K: 5.8,
    airC: 30,
  });

  /** The water of the pan, by slices of five minutes and the sun of their middle; 4.115 MJ warm a cubic metre by 1 K. */
  function warmestC(depthM: number): number {
    const angles = Array.from({ length: 168 }, (_, slice) => (Math.PI * (2 * slice + 1)) / 336);
    const courseC = [30];
    for (const angle of angles) {
      const plate = sunny(1000 * Math.sin(angle));
      const c = courseC.at(-1) ?? Number.NaN;
      courseC.push(c + plateGainWM2(plate, c) / ((depthM * 4.115e6) / 300 + plateLossWM2K(plate, c)));
    }
    return Math.max(...courseC);
  }

  it('brings a dry sheet to where it gains nothing at noon', () => {
    expect(dryStagnationC()).toBe(restingPlateC(sunny(1000)));
    expect(dryStagnationC()).toBeCloseTo(92.25, 2);
  });

  it('brings the full pan less far, the less the deeper it is', () => {
    for (const waterDepthM of [0.01, 0.04, 0.2])
      expect(wetStagnationC(of({ waterDepthM }))).toBeCloseTo(warmestC(waterDepthM), 9);
    expect(wetStagnationC(of({ waterDepthM: 0.2 }))).toBeLessThan(wetStagnationC(site));
    expect(wetStagnationC(site)).toBeLessThan(dryStagnationC());
  });

  it('is stood by a liner that stands as much', () => {
    const stands = (linerLimitC: number) => mayStandDry(of({ linerLimitC }));
    expect([stands(dryStagnationC()), stands(dryStagnationC() - 0.001)]).toEqual([true, false]);
  });
});
