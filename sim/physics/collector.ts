import { stefanBoltzmannWM2K4 } from '../weather/sky.ts';

/** Coefficients of an unglazed collector in the steady form. */
export interface CollectorCoefficients {
  /** Share of the net irradiance that is gathered in still air, no excess over the air. */
  readonly opticalEfficiency: number;
  /** Loss of that efficiency with each metre a second of wind [s/m]. */
  readonly windOpticalSM: number;
  readonly stillLossWM2K: number;
  /** Further loss with each metre a second of wind [J/m3K]. */
  readonly windLossJM3K: number;
  /** Emissivity of the sheet over its absorptivity. */
  readonly emissivityRatio: number;
}

export interface LightLoad {
  readonly irradianceWM2: number;
  readonly longWaveWM2: number;
  readonly airC: number;
}

export interface SkyLoad extends LightLoad {
  readonly windMs: number;
}

/** What the sky sends down less what a black body at air temperature sends up [W/m2]; negative when clear. */
function netLongWaveWM2(longWaveWM2: number, airC: number): number {
  return longWaveWM2 - stefanBoltzmannWM2K4 * (airC + 273.15) ** 4;
}

/**
 * Net irradiance of the steady unglazed form [W/m2]: G'' = G + (eps/alpha)(EL - sigma Ta^4); negative under a clear
 * night sky.
 */
export function netIrradianceWM2(load: LightLoad, { emissivityRatio }: CollectorCoefficients): number {
  return load.irradianceWM2 + emissivityRatio * netLongWaveWM2(load.longWaveWM2, load.airC);
}

/** Share of it that is gathered in a wind, 0 to 1: eta0 (1 - bu u). Wind beyond 1/bu counts as 1/bu. */
export function opticalFraction(windMs: number, c: CollectorCoefficients): number {
  return c.opticalEfficiency * Math.max(0, 1 - c.windOpticalSM * windMs);
}

/**
 * Heat that sun and sky bring to a sheet at air temperature [W/m2]; negative under a clear night sky.
 *
 * eta0 (1 - bu u) G'': the gain of the steady unglazed form of the ISO 9806 lineage, from memory.
 */
export function sheetGainWM2(load: SkyLoad, c: CollectorCoefficients): number {
  return opticalFraction(load.windMs, c) * netIrradianceWM2(load, c);
}

/**
 * Conductance from the sheet to the air [W/m2K]: b1 + b2 u of the same form, whose useful heat is the gain
 * less this times the excess over the air.
 */
export function sheetLossWM2K(windMs: number, c: CollectorCoefficients): number {
  return c.stillLossWM2K + c.windLossJM3K * windMs;
}
