import type { Site } from '../../shared-types/site.ts';
import {
  type BarePlate,
  blackFraction,
  plateConvectionWM2K,
  plateGainWM2,
  plateLossWM2K,
  restingPlateC,
} from './bare-plate.ts';
import { blackBodyWM2 } from './sky.ts';

/** The hot, still day by which a liner is judged; design choices: light air of 1 m/s, a sky 15 K below the air. */
const hotAirC = 30;
const hotSkyC = 15;
const noonWM2 = 1000;
const lightAirMs = 1;
/** The sun of that day, as half a sine [h]. */
const dayH = 14;
/** Step in which the full pan is followed through it [s]. */
const stepS = 300;
/** Heat that warms a cubic metre of water by one kelvin [J/m3K], at 60 °C. */
const waterJM3K = 4.115e6;

function hotPlate(sunWM2: number): BarePlate {
  return {
    absorbedWM2: blackFraction * sunWM2,
    emissivity: blackFraction,
    skyWM2: blackBodyWM2(hotSkyC),
    convectionWM2K: plateConvectionWM2K(lightAirMs),
    airC: hotAirC,
  };
}

/**
 * Temperature that a dry sheet reaches on a hot, still day [°C]: some 92 in the sun of its noon, whatever the site.
 *
 * @param sunWM2 - Sun on the level, 0 or more.
 */
export function dryStagnationC(sunWM2 = noonWM2): number {
  return restingPlateC(hotPlate(sunWM2));
}

/**
 * The warmest that the resting full pan becomes in the course of such a day, begun at the air's temperature [°C].
 *
 * The water follows the sheet as one body, without loss below: the deeper, the cooler.
 */
export function wetStagnationC({ pan }: Site): number {
  const heatJM2K = pan.waterDepthM * waterJM3K;
  const steps = Math.round((dayH * 3600) / stepS);
  let waterC = hotAirC;
  let hottestC = waterC;
  for (let step = 0; step < steps; step++) {
    const plate = hotPlate(noonWM2 * Math.sin((Math.PI * (step + 0.5)) / steps));
    const gainW = plateGainWM2(plate, waterC);
    waterC += (gainW * stepS) / (heatJM2K + plateLossWM2K(plate, waterC) * stepS);
    hottestC = Math.max(hottestC, waterC);
  }
  return hottestC;
}

/**
 * True when the sheet may stand dry: the liner below it stands what it then reaches.
 *
 * @param sunWM2 - Most sun that it will get; that of a hot day's noon when absent.
 */
export function mayStandDry({ pan }: Site, sunWM2?: number): boolean {
  return dryStagnationC(sunWM2) <= pan.linerLimitC;
}
