import { describe, expect, it } from 'vitest';
import {
  type CollectorCoefficients,
  type SkyLoad,
  sheetGainWM2,
  sheetLossWM2K,
} from '../../sim/physics/collector.ts';
import { reportedHeatWM2, reportOf } from '../../sim/physics/test-report.ts';
import { usualTraits } from '../../sim/plant/traits.ts';
import { blackBodyWM2 } from '../../sim/weather/sky.ts';

/** Useful heat [W/m2] with the water at its mean temperature, put together from the plant's two parts. */
const collectorHeatWM2 = (meanC: number, load: SkyLoad, coefficients: CollectorCoefficients) =>
  sheetGainWM2(load, coefficients) - sheetLossWM2K(load.windMs, coefficients) * (meanC - load.airC);

const half = 5e-5;
const checked = { opticalEfficiency: 0.9, windOpticalSM: 0.03, stillLossWM2K: 10, windLossJM3K: 4 };

/** Steady unglazed form of the ISO 9806 lineage, from memory; values computed by an independent program. */
describe('unglazed collector', () => {
  it('gains 463.2857 W/m2 from a net 725.1724 at 10 K over the air in light wind', () => {
    const coefficients = { ...checked, emissivityRatio: 0.95 };
    const load = { irradianceWM2: 800, longWaveWM2: 340, windMs: 1.5, airC: 20 };
    const netWM2 = sheetGainWM2(load, { ...coefficients, opticalEfficiency: 1, windOpticalSM: 0 });
    expect(Math.abs(netWM2 - 725.1724)).toBeLessThan(half);
    expect(Math.abs(collectorHeatWM2(30, load, coefficients) - 463.2857)).toBeLessThan(half);
  });

  it('gains 737.0460 W/m2 from a net 899.9341 at air temperature', () => {
    const coefficients = { ...checked, emissivityRatio: 1 };
    const load = { irradianceWM2: 1000, longWaveWM2: 318.7, windMs: 3, airC: 20 };
    const netWM2 = sheetGainWM2(load, { ...coefficients, opticalEfficiency: 1, windOpticalSM: 0 });
    expect(Math.abs(netWM2 - 899.9341)).toBeLessThan(half);
    expect(Math.abs(collectorHeatWM2(20, load, coefficients) - 737.046)).toBeLessThan(half);
  });

  it('loses heat under a clear night sky even at air temperature', () => {
    const load = { irradianceWM2: 0, longWaveWM2: 250, windMs: 1, airC: 5 };
    expect(collectorHeatWM2(5, load, usualTraits)).toBeLessThan(-50);
  });
});

/** Quasi-dynamic form of ISO 9806:2017, from memory; values computed by an independent program. */
describe('collector of a test report', () => {
  const coefficients = {
    eta0b: 0.9,
    kb: 1,
    kd: 0.97,
    a1: 18,
    a2: 0,
    a3: 2.5,
    a4: 0.5,
    a6: 0.03,
    a7: 0,
    a8: 0,
  };

  it('gains 209.5670 W/m2 while it warms by 2 mK a second', () => {
    const heatWM2 = reportedHeatWM2(
      { beamWM2: 700, diffuseWM2: 150, longWaveWM2: 330, windMs: 2, airC: 20, meanC: 35, meanKS: 0.002 },
      { ...coefficients, a5: 150_000 },
    );
    expect(Math.abs(heatWM2 - 209.567)).toBeLessThan(half);
  });

  it('gains 894.2500 W/m2 at air temperature', () => {
    const heatWM2 = reportedHeatWM2(
      {
        beamWM2: 850,
        diffuseWM2: 150,
        longWaveWM2: blackBodyWM2(20) - 100,
        windMs: 1.3,
        airC: 20,
        meanC: 20,
        meanKS: 0,
      },
      { ...coefficients, kd: 0.95, a5: 0 },
    );
    expect(Math.abs(heatWM2 - 894.25)).toBeLessThan(half);
  });

  it('is the steady form in other words', () => {
    const load = { irradianceWM2: 640, longWaveWM2: 300, windMs: 4.2, airC: 12 };
    const steadyWM2 = collectorHeatWM2(31, load, usualTraits);
    const reportedWM2 = reportedHeatWM2(
      { ...load, beamWM2: 500, diffuseWM2: 140, meanC: 31, meanKS: 0 },
      reportOf(usualTraits, 170_000),
    );
    expect(reportedWM2).toBeCloseTo(steadyWM2, 9);
  });
});

/** Ranges of unglazed collectors, from memory: no measured set could be read. */
it('takes coefficients from the middle of the usual ranges where nothing is known', () => {
  expect(usualTraits.opticalEfficiency).toBeCloseTo((0.85 + 0.96) / 2, 12);
  expect(usualTraits.windOpticalSM).toBeCloseTo((0.01 + 0.04) / 2, 12);
  expect(usualTraits.stillLossWM2K).toBeCloseTo((8 + 15) / 2, 12);
  expect(usualTraits.windLossJM3K).toBeCloseTo((2 + 5) / 2, 12);
});
