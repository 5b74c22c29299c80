import { getSpa, SPA_ZA } from 'nrel-spa';

const radians = Math.PI / 180;

export interface SunPosition {
  /** Angle from the vertical as seen, refraction included [deg], 0 to 180. */
  readonly zenithDeg: number;
  /** From north through east [deg], 0 to 360. */
  readonly azimuthDeg: number;
}

export interface AirAndClock {
  /** Height of the place [m], for parallax. */
  readonly elevationM?: number;
  /** Air pressure and temperature at the place, for refraction. No pressure, no refraction. */
  readonly pressureHPa?: number;
  readonly temperatureC?: number;
  /** Terrestrial time ahead of universal time [s]; 69 s in the years around 2020 (from memory). */
  readonly deltaTS?: number;
}

/**
 * Where the sun stands.
 *
 * @param atMs - Instant [UTC ms], years -2000 to 6000.
 * @param latitudeDeg - -90 to 90, north positive. @param longitudeDeg - -180 to 180, east positive.
 * @throws RangeError when a value is out of its range.
 *
 * Error: 0.0003 deg. Source: Reda & Andreas, Solar Position Algorithm for Solar Radiation Applications,
 * NREL/TP-560-34302, by the library `nrel-spa`.
 */
export function sunPosition(
  atMs: number,
  latitudeDeg: number,
  longitudeDeg: number,
  { elevationM = 0, pressureHPa = 1013.25, temperatureC = 10, deltaTS = 69 }: AirAndClock = {},
): SunPosition {
  // The library reads the UTC fields of the date as local clock time in the zone: only zone 0 takes a true
  // instant. It drops the milliseconds; its correction of universal time brings them back.
  const { zenith, azimuth } = getSpa(new Date(Math.floor(atMs / 1000) * 1000), latitudeDeg, longitudeDeg, 0, {
    elevation: elevationM,
    pressure: pressureHPa,
    temperature: temperatureC,
    delta_t: deltaTS,
    delta_ut1: (atMs - Math.floor(atMs / 1000) * 1000) / 1000,
    function: SPA_ZA,
  });
  return { zenithDeg: zenith, azimuthDeg: azimuth };
}

/**
 * Geometric zenith and azimuth of a body, without refraction.
 *
 * @param latitudeDeg - -90 to 90, north positive.
 * @param declinationDeg - -90 to 90.
 * @param hourAngleDeg - 0 when the body stands over the meridian, positive afterwards.
 *
 * Source: spherical triangle, as in Duffie & Beckman, Solar Engineering of Thermal Processes,
 * section 1.6.
 */
export function horizontalPosition(
  latitudeDeg: number,
  declinationDeg: number,
  hourAngleDeg: number,
): SunPosition {
  const latitude = latitudeDeg * radians;
  const declination = declinationDeg * radians;
  const hour = hourAngleDeg * radians;
  const cosZenith =
    Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.cos(hour);
  const east = -Math.cos(declination) * Math.sin(hour);
  const north =
    Math.cos(latitude) * Math.sin(declination) - Math.sin(latitude) * Math.cos(declination) * Math.cos(hour);
  return {
    zenithDeg: Math.acos(Math.min(1, Math.max(-1, cosZenith))) / radians,
    azimuthDeg: (Math.atan2(east, north) / radians + 360) % 360,
  };
}

/**
 * How much the air lifts the sun [deg].
 *
 * @param elevationDeg - Geometric elevation; nothing is added below -0.8334 deg, when even the lifted upper
 * limb is down.
 *
 * Source: NREL/TP-560-34302 equation 42, with the sun's radius and the usual 0.5667 deg at the horizon.
 */
export function refractionDeg(elevationDeg: number, pressureHPa: number, temperatureC: number): number {
  if (elevationDeg < -(0.26667 + 0.5667)) return 0;
  const lifted = (elevationDeg + 10.3 / (elevationDeg + 5.11)) * radians;
  return ((pressureHPa / 1010) * (283 / (273 + temperatureC)) * 1.02) / (60 * Math.tan(lifted));
}
