/**
 * Global irradiance on the level under a clear sky [W/m2].
 *
 * @param zenithDeg - Zenith of the sun, 0 to 180; 90 and more give 0.
 *
 * Source: Haurwitz 1945 with the constants 1098 and 0.059, as in Reno, Hansen & Stein,
 * SAND2012-2389. The constant 0.057 also circulates; it gives up to 2.3 % more.
 * Error: the model knows no haze; measured clear days differ by some 5 to 10 % (from memory).
 */
export function haurwitzWM2(zenithDeg: number): number {
  const cosZenith = Math.cos((zenithDeg * Math.PI) / 180);
  if (zenithDeg >= 90 || cosZenith <= 0) return 0;
  return 1098 * cosZenith * Math.exp(-0.059 / cosZenith);
}
