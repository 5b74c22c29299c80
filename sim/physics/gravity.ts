/** Standard gravity [m/s2]. */
export const gravityMS2 = 9.80665;

/** Pressure of a depth of water on what lies under it [Pa]. */
export function depthPa(depthM: number, densityKgM3: number): number {
  return depthM * densityKgM3 * gravityMS2;
}
