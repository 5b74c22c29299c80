/**
 * Share of the global irradiance on the level that comes from the whole sky, 0.165 to 1.
 *
 * @param clearness - Global over extraterrestrial irradiance on the level, 0 or more.
 *
 * Error: an hour's own share scatters by 0.1 to 0.2 around the fit (from memory). The fit jumps by 0.0003 at
 * 0.8 as published. Source: Erbs, Klein & Duffie, Solar Energy 28 (1982) 293.
 */
export function erbsDiffuseFraction(clearness: number): number {
  const k = clearness;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k <= 0.8) return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
  return 0.165;
}

/**
 * Clearness of a day by its hours of bright sunshine, 0.25 to 0.75.
 *
 * @param sunshineH - Hours of bright sunshine. @param possibleH - Hours from sunrise to sunset, above 0.
 *
 * Error: 10 % of a day's energy where the two constants are not fitted to the place (from memory).
 * Source: Angstrom's form with 0.25 and 0.5, as equation 35 of FAO Irrigation and Drainage Paper 56.
 */
export function sunshineClearness(sunshineH: number, possibleH: number): number {
  return 0.25 + 0.5 * Math.min(1, Math.max(0, sunshineH / possibleH));
}
