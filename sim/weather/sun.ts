const radians = Math.PI / 180;
const j2000Ms = 946_728_000_000;
const dayMs = 86_400_000;

export interface SunPosition {
  /** Angle from the vertical as seen, refraction included [deg], 0 to 180. */
  readonly zenithDeg: number;
  /** From north through east [deg], 0 to 360. */
  readonly azimuthDeg: number;
}

export interface SkyCoordinates {
  readonly declinationDeg: number;
  /** Hour angle at Greenwich, positive after noon [deg], -180 to 180. */
  readonly greenwichHourAngleDeg: number;
}

/** An angle brought to -180 (included) to 180 (excluded) [deg]. */
function halfTurn(angleDeg: number): number {
  return angleDeg - 360 * Math.floor((angleDeg + 180) / 360);
}

/**
 * Declination and hour angle of the sun.
 *
 * @param atMs - Instant [UTC ms], years 1950 to 2050.
 *
 * Error: 0.01 deg. Source: Michalsky, The Astronomical Almanac's algorithm for approximate solar
 * position (1950-2050), Solar Energy 40 (1988) 227; coefficients from memory, held to the worked
 * example of NREL/TP-560-34302 in tests/reference/sun.test.ts.
 */
export function sunCoordinates(atMs: number): SkyCoordinates {
  const n = (atMs - j2000Ms) / dayMs;
  const meanLongitudeDeg = 280.46 + 0.9856474 * n;
  const anomaly = (357.528 + 0.9856003 * n) * radians;
  const longitude = (meanLongitudeDeg + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * radians;
  const obliquity = (23.439 - 0.0000004 * n) * radians;
  const ascension = Math.atan2(Math.cos(obliquity) * Math.sin(longitude), Math.cos(longitude));
  const declination = Math.asin(Math.sin(obliquity) * Math.sin(longitude));
  // Sidereal time grows by a turn a day beyond the mean sun; at J2000 the clock stood at noon.
  const siderealDeg = 280.46061837 + 360.98564736629 * n;
  return {
    declinationDeg: declination / radians,
    greenwichHourAngleDeg: halfTurn(siderealDeg - ascension / radians),
  };
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
 * @param elevationDeg - Geometric elevation; below -0.56 deg nothing is added.
 * @param pressureHPa - Air pressure at the place.
 *
 * Source: the fit in Michalsky 1988 (from memory), scaled by pressure.
 */
function refractionDeg(elevationDeg: number, pressureHPa: number): number {
  if (elevationDeg < -0.56) return 0;
  const e = elevationDeg;
  const atSeaLevel = (3.51561 * (0.1594 + 0.0196 * e + 0.00002 * e * e)) / (1 + 0.505 * e + 0.0845 * e * e);
  return (atSeaLevel * pressureHPa) / 1013.25;
}

/**
 * Where the sun stands.
 *
 * @param atMs - Instant [UTC ms], years 1950 to 2050.
 * @param latitudeDeg - -90 to 90, north positive. @param longitudeDeg - -180 to 180, east positive.
 * @param pressureHPa - Air pressure at the place, for refraction.
 *
 * Error: 0.02 deg in zenith and azimuth while the sun is more than 5 deg above the horizon and 5 deg
 * away from the vertical.
 */
export function sunPosition(
  atMs: number,
  latitudeDeg: number,
  longitudeDeg: number,
  pressureHPa = 1013.25,
): SunPosition {
  const { declinationDeg, greenwichHourAngleDeg } = sunCoordinates(atMs);
  const seen = horizontalPosition(latitudeDeg, declinationDeg, greenwichHourAngleDeg + longitudeDeg);
  return { ...seen, zenithDeg: seen.zenithDeg - refractionDeg(90 - seen.zenithDeg, pressureHPa) };
}
