const radians = Math.PI / 180;

/**
 * Declination of a day by its number [deg], -23.45 to 23.45.
 *
 * @param dayOfYear - 1 to 366; fractions allowed.
 *
 * Error: up to 0.5 deg near the equinoxes (from memory). Source: Cooper 1969, as equation 1.6.1a of Duffie &
 * Beckman, Solar Engineering of Thermal Processes, 4th ed.
 */
export function cooperDeclinationDeg(dayOfYear: number): number {
  return 23.45 * Math.sin(((2 * Math.PI) / 365) * (284 + dayOfYear));
}

/**
 * Equation of time: sundial ahead of the clock [min], -15 to 17.
 *
 * Error: half a minute (from memory). Source: Spencer 1971, as equation 1.5.3 of Duffie & Beckman.
 */
export function equationOfTimeMin(dayOfYear: number): number {
  const b = ((dayOfYear - 1) * 2 * Math.PI) / 365;
  return (
    229.2 *
    (0.000075 +
      0.001868 * Math.cos(b) -
      0.032077 * Math.sin(b) -
      0.014615 * Math.cos(2 * b) -
      0.04089 * Math.sin(2 * b))
  );
}

/**
 * Hour angle of a geometric sunset on a level horizon [deg]: 0 in the polar night, 180 in the midnight sun.
 *
 * Source: Duffie & Beckman equation 1.6.10.
 */
export function sunsetHourAngleDeg(latitudeDeg: number, declinationDeg: number): number {
  const cosine = -Math.tan(latitudeDeg * radians) * Math.tan(declinationDeg * radians);
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / radians;
}

/** From geometric sunrise to sunset [h], 0 to 24. Source: Duffie & Beckman equation 1.6.11. */
export function dayLengthH(latitudeDeg: number, declinationDeg: number): number {
  return (2 / 15) * sunsetHourAngleDeg(latitudeDeg, declinationDeg);
}
