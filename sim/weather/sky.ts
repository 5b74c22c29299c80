/** Stefan-Boltzmann constant [W/m2K4], CODATA 2018. */
export const stefanBoltzmannWM2K4 = 5.670374419e-8;

/** Radiation of a black body [W/m2] at a temperature in °C, -273.15 or more. */
export function blackBodyWM2(temperatureC: number): number {
  return stefanBoltzmannWM2K4 * (temperatureC + 273.15) ** 4;
}

const magnusA = 17.62;
const magnusB = 243.12;

/**
 * Dew point over water [°C], below 0 °C as well.
 *
 * @param airC - -45 to 60. @param humidityFraction - above 0, to 1.
 * Source: Magnus form with the coefficients 17.62 and 243.12 °C of WMO-No. 8.
 */
export function dewPointC(airC: number, humidityFraction: number): number {
  const gamma = Math.log(Math.max(1e-4, humidityFraction)) + (magnusA * airC) / (magnusB + airC);
  return (magnusB * gamma) / (magnusA - gamma);
}

/** Relative humidity over water, 0 to 1, of air with a dew point. The inverse of `dewPointC`. */
export function humidityFraction(airC: number, dewC: number): number {
  const exponent = (magnusA * dewC) / (magnusB + dewC) - (magnusA * airC) / (magnusB + airC);
  return Math.min(1, Math.exp(exponent));
}

/**
 * Emissivity of a clear sky, 0 to 1.
 *
 * @param dewC - Dew point, -20 to 30 °C. @param solarHour - Hours after midnight, 0 to 24.
 * @param pressureHPa - Air pressure.
 * Source: Berdahl & Martin, Emissivity of clear skies, Solar Energy 32 (1984) 663.
 */
export function clearSkyEmissivity(dewC: number, solarHour: number, pressureHPa: number): number {
  const d = dewC / 100;
  const daily = 0.013 * Math.cos((2 * Math.PI * solarHour) / 24);
  return 0.711 + 0.56 * d + 0.73 * d * d + daily + 0.00012 * (pressureHPa - 1000);
}

/**
 * Emissivity of a clear sky by the air temperature alone, for want of humidity, 0 to 1.
 *
 * Source: Swinbank 1963, sky temperature 0.0552 Ta^1.5 in kelvin, as in Duffie & Beckman, Solar Engineering
 * of Thermal Processes, section 3.9.
 */
export function swinbankEmissivity(airC: number): number {
  return (swinbankSkyK(airC) / (airC + 273.15)) ** 4;
}

/** Temperature of a black sky above air of a temperature [K]. Source: Swinbank 1963. */
export function swinbankSkyK(airC: number): number {
  return 0.0552 * (airC + 273.15) ** 1.5;
}

/**
 * Emissivity of a sky with cloud, as weather files of the EPW kind count it when they hold no long-wave irradiance.
 *
 * @param dewC - Dew point, -70 to 70 °C. @param cloudFraction - Opaque cover, 0 to 1.
 * Source: the form of Clark & Allen 1978 with Walton's cloud term, as the EnergyPlus documents print it.
 */
export function cloudySkyEmissivity(dewC: number, cloudFraction: number): number {
  const n = 10 * cloudFraction;
  const cover = 1 + n * (0.0224 + n * (-0.0035 + n * 0.00028));
  return Math.min(1, (0.787 + 0.764 * Math.log((dewC + 273.15) / 273)) * cover);
}

/**
 * Long-wave irradiance from above [W/m2].
 *
 * Cloud closes a share of the window that a clear sky leaves open: 0.85 of it under full low cloud.
 * That share is a design choice, not a published figure.
 */
export function longWaveWM2(airC: number, emissivity: number, cloudFraction: number): number {
  return (emissivity + (1 - emissivity) * 0.85 * cloudFraction) * blackBodyWM2(airC);
}

/** Air pressure at a height [hPa], isothermal atmosphere with a scale height of 8434 m. */
export function pressureHPa(elevationM: number): number {
  return 1013.25 * Math.exp(-elevationM / 8434);
}
