import { describe, expect, it } from 'vitest';
import {
  plateConvectionWM2K,
  plateGainWM2,
  plateLossWM2K,
  restingPlateC,
} from '../../controller/engine/bare-plate.ts';
import { blackBodyWM2, clearSkyEmissivity, dewPointC } from '../../controller/engine/sky.ts';
import { dryStagnationC, mayStandDry, wetStagnationC } from '../../controller/engine/stagnation.ts';
import { makeSite } from '../unit/engine/rig.ts';

const half = 5e-4;

/** Emissivity .95; convection [W/m2K], air [°C], sky [°C], plate [°C]; computed by an independent program. */
describe("the engine's dry sheet at night", () => {
  const rows = [
    [2.8, 5, -15, -6.631],
    [5.8, 2, -18, -5.967],
  ] as const;
  it.each(rows)('with %d W/m2K under %d °C', (convectionWM2K, airC, skyC, plateC) => {
    const plate = { absorbedWM2: 0, emissivity: 0.95, skyWM2: blackBodyWM2(skyC), convectionWM2K, airC };
    expect(Math.abs(restingPlateC(plate) - plateC)).toBeLessThan(half);
    expect(Math.abs(plateGainWM2(plate, restingPlateC(plate)))).toBeLessThan(1e-9);
  });
});

/** Taken up [W/m2], emissivity, convection, air, sky, plate; computed by an independent program. */
describe("the engine's dry sheet in the sun", () => {
  const rows = [
    [950, 0.95, 5.8, 30, 15, 92.251],
    [720, 0.9, 10, 25, 10, 63.924],
  ] as const;
  it.each(rows)('that takes up %d W/m2', (absorbedWM2, emissivity, convectionWM2K, airC, skyC, plateC) => {
    const plate = { absorbedWM2, emissivity, skyWM2: blackBodyWM2(skyC), convectionWM2K, airC };
    expect(Math.abs(restingPlateC(plate) - plateC)).toBeLessThan(half);
  });

  it('stagnates at 92.25 °C on the hot day by which liners are judged', () => {
    expect(Math.abs(dryStagnationC() - 92.251)).toBeLessThan(half);
  });

  it('loses by its slope what it gains less a kelvin warmer', () => {
    const plate = {
      absorbedWM2: 500,
      emissivity: 0.95,
      skyWM2: blackBodyWM2(0),
      convectionWM2K: 8,
      airC: 20,
    };
    const slope = (plateGainWM2(plate, 30) - plateGainWM2(plate, 30.001)) / 0.001;
    expect(plateLossWM2K(plate, 30.0005)).toBeCloseTo(slope, 4);
  });
});

/**
 * Berdahl & Martin 1984: air 20 °C, dew point 10 °C, without the terms of hour and pressure: emissivity 0.77430, sky
 * 274.990 K, 324.250 W/m2, 94.515 W/m2 below the air; at 1013.25 hPa 0.00159 more. Computed from the equation.
 */
describe("the engine's clear sky", () => {
  /** Height at which the isothermal atmosphere has 1000 hPa. */
  const at1000M = 8434 * Math.log(1.01325);

  it('has the emissivity of the equation', () => {
    expect(clearSkyEmissivity(10, at1000M)).toBeCloseTo(0.7743, 5);
    expect(clearSkyEmissivity(10, 0)).toBeCloseTo(0.78889 - 0.013, 5);
    expect(clearSkyEmissivity(10, at1000M) * blackBodyWM2(20)).toBeCloseTo(324.25, 2);
    expect(clearSkyEmissivity(10, at1000M) * blackBodyWM2(20) - blackBodyWM2(20)).toBeCloseTo(-94.515, 2);
  });

  it('is that of the nearest dew point beyond its range', () => {
    expect(clearSkyEmissivity(-30, 0)).toBe(clearSkyEmissivity(-20, 0));
    expect(clearSkyEmissivity(40, 0)).toBe(clearSkyEmissivity(30, 0));
    expect(clearSkyEmissivity(-19, 0)).not.toBe(clearSkyEmissivity(-20, 0));
  });

  /** 0 and 20 °C: 315.658 and 418.766 W/m2. */
  it('radiates like a black body', () => {
    expect(blackBodyWM2(0)).toBeCloseTo(315.658, 3);
    expect(blackBodyWM2(20)).toBeCloseTo(418.766, 3);
  });

  /** Magnus form of WMO-No. 8: 20 °C 50 % 9.255; 25 °C 60 % 16.693; 30 °C 30 % 10.529 °C. */
  it.each([
    [20, 0.5, 9.255],
    [25, 0.6, 16.693],
    [30, 0.3, 10.529],
  ])('has at %d °C and a humidity of %d the dew point %d °C', (airC, humidity, dewC) => {
    expect(Math.abs(dewPointC(airC, humidity) - dewC)).toBeLessThan(half);
  });

  it('takes a humidity of nothing for 1 %', () => {
    expect(dewPointC(10, 0)).toBe(dewPointC(10, 0.01));
  });
});

/**
 * Net radiative power of a black surface at air temperature on clear nights: 40 to 60 W/m2 in summer, 60 to 80 in
 * autumn and winter; a radiating store ended its nights 2 to 5 K below the air. Published in the abstract of a study
 * of such stores; air, dew point and wind here are of our choice, hence checks of plausibility with 40 %.
 */
describe('what was measured on clear nights', () => {
  const rows = [
    ['summer', 20, 17, 40, 60],
    ['autumn', 10, 6, 60, 80],
    ['winter', 2, -2, 60, 80],
  ] as const;
  it.each(rows)('in %s at %d °C with a dew point of %d °C', (_, airC, dewC, fromWM2, toWM2) => {
    const netWM2 = (1 - clearSkyEmissivity(dewC, 0)) * blackBodyWM2(airC);
    expect(netWM2).toBeGreaterThan(0.6 * fromWM2);
    expect(netWM2).toBeLessThan(1.4 * toWM2);
  });

  it('a full pan ends ten hours in light wind 2 to 5 K below the air', () => {
    const plate = {
      absorbedWM2: 0,
      emissivity: 0.95,
      skyWM2: clearSkyEmissivity(11, 0) * blackBodyWM2(15),
      convectionWM2K: plateConvectionWM2K(1),
      airC: 15,
    };
    const sheetC = restingPlateC(plate);
    const timeConstantS = (0.04 * 4.194e6) / plateLossWM2K(plate, (15 + sheetC) / 2);
    const belowK = (15 - sheetC) * (1 - Math.exp(-36_000 / timeConstantS));
    expect(belowK).toBeGreaterThan(0.6 * 2);
    expect(belowK).toBeLessThan(1.4 * 5);
  });

  /** Watmuff, Charters & Proctor 1977: 11.8 W/m2K at 3 m/s. */
  it('wind takes as much as was measured', () => {
    expect(plateConvectionWM2K(3)).toBeCloseTo(11.8, 10);
  });
});

describe('a liner under the sheet', () => {
  const withPan = (pan: object) =>
    makeSite('drain-valve', undefined, { pan: { grossAreaM2: 10, wettedAreaM2: 10, ...pan } });

  it('may stand dry only where it stands 92.25 °C', () => {
    expect(mayStandDry(withPan({ waterDepthM: 0.04, linerLimitC: 92.2 }))).toBe(false);
    expect(mayStandDry(withPan({ waterDepthM: 0.04, linerLimitC: 92.3 }))).toBe(true);
  });

  /** Computed by another program with a step of one second, explicit; the step here costs less than 0.2 K. */
  it.each([
    [0.02, 89.212],
    [0.04, 82.597],
  ])('under a resting pan of %d m becomes %d °C', (waterDepthM, hottestC) => {
    expect(Math.abs(wetStagnationC(withPan({ waterDepthM, linerLimitC: 80 })) - hottestC)).toBeLessThan(0.2);
  });
});
