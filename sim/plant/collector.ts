import { stefanBoltzmannWM2K4 } from '../weather/sky.ts';

/** Coefficients of an unglazed collector in the steady form. */
export interface CollectorCoefficients {
  readonly eta0: number;
  /** Loss of efficiency with wind [s/m]. */
  readonly bu: number;
  /** [W/m2K] */
  readonly b1: number;
  /** [Ws/m3K] */
  readonly b2: number;
  /** Emissivity of the sheet over its absorptivity. */
  readonly emissivityRatio: number;
}

/** Middle of the ranges 0.85-0.96, 0.01-0.04, 8-15, 2-5; all from memory, none measured. */
export const blackSheet: CollectorCoefficients = {
  eta0: 0.92,
  bu: 0.02,
  b1: 10,
  b2: 3,
  emissivityRatio: 0.95,
};

export interface SkyLoad {
  readonly irradianceWM2: number;
  readonly longWaveWM2: number;
  readonly windMs: number;
  readonly airC: number;
}

/**
 * Heat that sun and sky bring to a sheet at air temperature [W/m2]; negative under a clear night sky.
 *
 * eta0 (1 - bu u) G'', G'' = G + (eps/alpha)(EL - sigma Ta^4): the gain of the steady unglazed form of
 * the ISO 9806 lineage, from memory. Wind beyond 1/bu counts as 1/bu.
 */
export function sheetGainWM2(load: SkyLoad, c: CollectorCoefficients): number {
  const netLongWaveWM2 = load.longWaveWM2 - stefanBoltzmannWM2K4 * (load.airC + 273.15) ** 4;
  const netWM2 = load.irradianceWM2 + c.emissivityRatio * netLongWaveWM2;
  return c.eta0 * Math.max(0, 1 - c.bu * load.windMs) * netWM2;
}

/**
 * Conductance from the sheet to the air [W/m2K]: b1 + b2 u of the same form, whose useful heat is the gain
 * less this times the excess over the air.
 */
export function sheetLossWM2K(windMs: number, c: CollectorCoefficients): number {
  return c.b1 + c.b2 * windMs;
}
