import { stefanBoltzmannWM2K4 } from './sky.ts';

/** A black sheet that is insulated below. */
export interface BarePlate {
  /** Sun that the sheet takes up [W/m2]: absorptivity times irradiance. */
  readonly absorbedWM2: number;
  readonly emissivity: number;
  /** Long-wave irradiance from above [W/m2]. */
  readonly skyWM2: number;
  readonly convectionWM2K: number;
  readonly airC: number;
}

/** Emissivity and absorptivity of a black sheet; from memory, 0.9 to 0.97 is usual for paint and rubber. */
export const blackFraction = 0.95;
/** Rounds in which Newton's rule closes in to below a millionth of a kelvin, whatever the weather. */
const rounds = 8;

/** Heat that the plate gains at a temperature [W/m2]. */
export function plateGainWM2(plate: BarePlate, plateC: number): number {
  const { absorbedWM2, emissivity, skyWM2, convectionWM2K, airC } = plate;
  const square = (plateC + 273.15) * (plateC + 273.15);
  return (
    absorbedWM2 +
    emissivity * (skyWM2 - stefanBoltzmannWM2K4 * square * square) -
    convectionWM2K * (plateC - airC)
  );
}

/** How much less it gains with each kelvin [W/m2K]. */
export function plateLossWM2K({ emissivity, convectionWM2K }: BarePlate, plateC: number): number {
  const plateK = plateC + 273.15;
  return 4 * emissivity * stefanBoltzmannWM2K4 * plateK * plateK * plateK + convectionWM2K;
}

/**
 * Temperature at which the plate neither warms nor cools [°C].
 *
 * alpha G + eps (EL - sigma T^4) - h (T - Ta) = 0, by Newton's rule.
 */
export function restingPlateC(plate: BarePlate): number {
  let plateC = plate.airC;
  for (let round = 0; round < rounds; round++)
    plateC += plateGainWM2(plate, plateC) / plateLossWM2K(plate, plateC);
  return plateC;
}

/**
 * Convection from a plate to the wind [W/m2K].
 *
 * Source: Watmuff, Charters & Proctor 1977, as later papers quote it; the lowest of the usual ones, without
 * radiation. In light wind that is what lets a sheet fall furthest below the air.
 */
export function plateConvectionWM2K(windMs: number): number {
  return 2.8 + 3 * windMs;
}
