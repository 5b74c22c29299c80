import { describe, expect, it } from 'vitest';
import {
  type CollectorCoefficients,
  type SkyLoad,
  sheetGainWM2,
  sheetLossWM2K,
} from '../../sim/plant/collector.ts';

/** Useful heat [W/m2] with the water at its mean temperature, put together from the plant's two parts. */
const collectorHeatWM2 = (meanC: number, load: SkyLoad, coefficients: CollectorCoefficients) =>
  sheetGainWM2(load, coefficients) - sheetLossWM2K(load.windMs, coefficients) * (meanC - load.airC);

/** Steady unglazed form of the ISO 9806 lineage, from memory; values computed by another program. */
describe('unglazed collector', () => {
  it('gains 463.2857 W/m2 at 10 K over the air in light wind', () => {
    const coefficients = { eta0: 0.9, bu: 0.03, b1: 10, b2: 4, emissivityRatio: 0.95 };
    const load = { irradianceWM2: 800, longWaveWM2: 340, windMs: 1.5, airC: 20 };
    expect(Math.abs(collectorHeatWM2(30, load, coefficients) - 463.2857)).toBeLessThan(5e-5);
  });

  it('gains 737.0460 W/m2 at air temperature', () => {
    const coefficients = { eta0: 0.9, bu: 0.03, b1: 10, b2: 4, emissivityRatio: 1 };
    const load = { irradianceWM2: 1000, longWaveWM2: 318.7, windMs: 3, airC: 20 };
    expect(Math.abs(collectorHeatWM2(20, load, coefficients) - 737.046)).toBeLessThan(5e-5);
  });

  it('loses heat under a clear night sky even at air temperature', () => {
    const coefficients = { eta0: 0.92, bu: 0.02, b1: 10, b2: 3, emissivityRatio: 0.95 };
    const load = { irradianceWM2: 0, longWaveWM2: 250, windMs: 1, airC: 5 };
    expect(collectorHeatWM2(5, load, coefficients)).toBeLessThan(-50);
  });
});
