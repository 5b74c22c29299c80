import { stefanBoltzmannWM2K4 } from '../weather/sky.ts';

/** A sheet with no water on it, insulated below. */
export interface DryPlate {
  /** Sun that the sheet takes up [W/m2]: absorptivity times irradiance. */
  readonly absorbedWM2: number;
  readonly emissivity: number;
  readonly longWaveWM2: number;
  readonly convectionWM2K: number;
  readonly airC: number;
}

/**
 * Temperature at which a dry sheet neither warms nor cools [°C], to 1e-9 K.
 *
 * alpha G + eps (EL - sigma T^4) - h (T - Ta) = 0. Newton's rule; the left side falls ever faster with T,
 * so that it closes in from above whatever it starts from.
 */
export function dryPlateC(plate: DryPlate): number {
  const { absorbedWM2, emissivity, longWaveWM2, convectionWM2K, airC } = plate;
  const airK = airC + 273.15;
  let plateK = airK;
  for (let round = 0; round < 50; round++) {
    const radiatedWM2 = emissivity * (longWaveWM2 - stefanBoltzmannWM2K4 * plateK ** 4);
    const leftWM2 = absorbedWM2 + radiatedWM2 - convectionWM2K * (plateK - airK);
    const slopeWM2K = 4 * emissivity * stefanBoltzmannWM2K4 * plateK ** 3 + convectionWM2K;
    const changeK = leftWM2 / slopeWM2K;
    plateK += changeK;
    if (Math.abs(changeK) < 1e-10) break;
  }
  return plateK - 273.15;
}
