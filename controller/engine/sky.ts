/** Stefan-Boltzmann constant [W/m2K4], CODATA 2018. */
export const stefanBoltzmannWM2K4 = 5.670374419e-8;

/** Radiation of a black body [W/m2] at a temperature in °C, -273.15 or more. */
export function blackBodyWM2(temperatureC: number): number {
  const square = (temperatureC + 273.15) * (temperatureC + 273.15);
  return stefanBoltzmannWM2K4 * square * square;
}

/** Coefficients of the Magnus form over water; b in °C. */
const magnusA = 17.62;
const magnusB = 243.12;
/** A humidity below this is no weather but a sensor's error. */
const leastHumidityFraction = 0.01;

/**
 * Dew point over water [°C], below 0 °C as well.
 *
 * @param airC - -45 to 60. @param humidityFraction - 0 to 1; less than 0.01 counts as 0.01.
 * Source: Magnus form with the coefficients of WMO-No. 8.
 */
export function dewPointC(airC: number, humidityFraction: number): number {
  const gamma =
    Math.log(Math.max(leastHumidityFraction, humidityFraction)) + (magnusA * airC) / (magnusB + airC);
  return rounded((magnusB * gamma) / (magnusA - gamma));
}

/** To a thousandth, so that every JavaScript engine says the same. */
function rounded(valueC: number): number {
  return Math.round(valueC * 1000) / 1000;
}

/** Dew points for which the emissivity below was measured [°C]. */
const leastDewC = -20;
const mostDewC = 30;
/** Height in which the pressure of an isothermal atmosphere falls to 37 % [m]. */
const scaleHeightM = 8434;

/**
 * Emissivity of a clear sky, 0 to 1.
 *
 * @param dewC - Dew point, -20 to 30 °C; outside it the nearest end counts. @param elevationM - Above the sea.
 *
 * The daily term is left out, +0.013 at midnight: the sky counts as up to 1 K colder than it is.
 * Source: Berdahl & Martin, Emissivity of clear skies, Solar Energy 32 (1984) 663.
 */
export function clearSkyEmissivity(dewC: number, elevationM: number): number {
  const d = Math.min(Math.max(dewC, leastDewC), mostDewC) / 100;
  const pressureHPa = 1013.25 * Math.exp(-elevationM / scaleHeightM);
  return 0.711 + 0.56 * d + 0.73 * d * d + 0.00012 * (pressureHPa - 1000);
}
