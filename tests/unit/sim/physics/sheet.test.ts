import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { restingPlateC } from '../../../../controller/engine/bare-plate.ts';
import { flowFactor } from '../../../../controller/engine/pair/heat-removal.ts';
import { stefanBoltzmannWM2K4 } from '../../../../controller/engine/sky.ts';
import { finEfficiency } from '../../../../sim/physics/fin.ts';
import { efficiencyFactor } from '../../../../sim/physics/heat-removal.ts';
import { lumpedPanC, stillPanC } from '../../../../sim/physics/lumped-pan.ts';

/** A whole number of steps between two ends. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((n) => least + ((most - least) * n) / 10_000);

describe('a strip of dry sheet', () => {
  it('brings all of its heat when it has no width, nothing when it does not conduct', () => {
    expect(finEfficiency(0, 20, 0)).toBe(1);
    expect(finEfficiency(0.1, 20, 0)).toBe(0);
    expect(finEfficiency(1e-9, 20, 0.05)).toBe(1);
  });
  it('brings a smaller share the wider it is', () => {
    fc.assert(
      fc.property(between(0.001, 1), between(5, 40), between(0.01, 0.5), (lengthM, loss, conductance) => {
        const share = finEfficiency(lengthM, loss, conductance);
        expect(share).toBeLessThan(1);
        expect(finEfficiency(2 * lengthM, loss, conductance)).toBeLessThan(share);
      }),
    );
  });
});

describe('efficiency factor', () => {
  it('of a sheet that lies on water all over is h over h + U', () => {
    const sheet = { pitchM: 3, onWaterM: 3, wettedM: 3, lossWM2K: 18, sheetConductanceWK: 0.05 };
    expect(efficiencyFactor({ ...sheet, contactWM2K: 250 })).toBeCloseTo(250 / 268, 12);
  });
  it('falls with a dry rim by what the rim does not bring', () => {
    const sheet = { pitchM: 3.1, onWaterM: 3, wettedM: 3, lossWM2K: 18, sheetConductanceWK: 0 };
    expect(efficiencyFactor({ ...sheet, contactWM2K: 1e12 })).toBeCloseTo(3 / 3.1, 9);
  });
  it('needs flow', () => {
    const flow = { areaM2: 12, lossWM2K: 18, efficiencyFactor: 0.9 };
    expect(flowFactor({ ...flow, capacityRateWK: 0 })).toBe(0);
    expect(flowFactor({ ...flow, areaM2: 0, capacityRateWK: 100 })).toBe(1);
  });
});

describe('a dry sheet', () => {
  it('takes and gives the same, whatever the weather', () => {
    const weather = [between(0, 1100), between(0, 1), between(150, 500), between(1, 40), between(-30, 50)];
    fc.assert(
      fc.property(fc.tuple(...weather), ([sun = 0, emissivity = 0, longWave = 0, wind = 0, airC = 0]) => {
        const plate = { absorbedWM2: sun, emissivity, skyWM2: longWave, convectionWM2K: wind, airC };
        const plateC = restingPlateC(plate);
        const radiatedWM2 = emissivity * stefanBoltzmannWM2K4 * (plateC + 273.15) ** 4;
        const leftWM2 = sun + emissivity * longWave - radiatedWM2 - wind * (plateC - airC);
        // 1e-9 K times a slope of some tens of W/m2K.
        expect(Math.abs(leftWM2)).toBeLessThan(1e-7);
      }),
    );
  });
});

describe('a pan that is one body', () => {
  const pan = { gainWM2: 500, lossWM2K: 20, capacityJM2K: 170_000, airC: 15 };
  it('begins where it begins and ends where nothing changes', () => {
    expect(lumpedPanC(pan, 33, 0)).toBe(33);
    expect(lumpedPanC(pan, 33, 1e7)).toBeCloseTo(stillPanC(pan), 9);
  });
  it('does in two halves what it does at once', () => {
    const halfWayC = lumpedPanC(pan, 20, 1800);
    expect(lumpedPanC(pan, halfWayC, 1800)).toBeCloseTo(lumpedPanC(pan, 20, 3600), 9);
  });
});
