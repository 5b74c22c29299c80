import type { BarePlate } from '../../controller/engine/bare-plate.ts';
import type { SkyLoad } from '../physics/collector.ts';
import { clearSkyEmissivity, longWaveWM2, pressureHPa } from '../weather/sky.ts';

/** A day or night under a clear sky that a figure is stated for. Design choices, named beside each figure. */
export interface StatedWeather {
  readonly words: string;
  readonly irradianceWM2: number;
  readonly airC: number;
  readonly dewC: number;
  readonly windMs: number;
  readonly solarHour: number;
}

export const hotNoon: StatedWeather = {
  words: 'hot noon: 1000 W/m2, air 35 C, dew point 15 C, wind 1 m/s, clear',
  irradianceWM2: 1000,
  airC: 35,
  dewC: 15,
  windMs: 1,
  solarHour: 12,
};

export const clearNight: StatedWeather = {
  words: 'clear night: air 3 C, dew point 0 C, wind 1 m/s',
  irradianceWM2: 0,
  airC: 3,
  dewC: 0,
  windMs: 1,
  solarHour: 4,
};

/** Of a black sheet, from memory. Its emissivity follows from the loop's ratio of the two. */
const absorptivity = 0.95;

export function loadOf({ irradianceWM2, airC, dewC, windMs, solarHour }: StatedWeather, elevationM: number) {
  const emissivity = clearSkyEmissivity(dewC, solarHour, pressureHPa(elevationM));
  return { irradianceWM2, airC, windMs, longWaveWM2: longWaveWM2(airC, emissivity, 0) };
}

/** The sheet of a pan without water, its back insulated. */
export function dryPlateUnder(load: SkyLoad, emissivityRatio: number, convectionWM2K: number): BarePlate {
  return {
    absorbedWM2: absorptivity * load.irradianceWM2,
    emissivity: Math.min(1, absorptivity * emissivityRatio),
    skyWM2: load.longWaveWM2,
    convectionWM2K,
    airC: load.airC,
  };
}
