import { waterDensityKgM3 } from '../../controller/engine/water.ts';

/** Coefficients and powers of the temperature over 300 K. */
const terms = [
  [280.68, -1.9],
  [511.45, -7.7],
  [61.131, -19.6],
  [0.45903, -40],
] as const;

/**
 * Dynamic viscosity of liquid water at atmospheric pressure [Pa s].
 *
 * @param waterC - Temperature [°C], -20 to 110.
 *
 * Error: below 0.1 % against IAPWS R12-08 from 0 to 90 °C (tests/reference).
 * Source: IAPWS SR6-08, liquid water at 0.1 MPa; coefficients from memory.
 */
export function waterViscosityPaS(waterC: number): number {
  const ratio = (waterC + 273.15) / 300;
  let viscosityMicroPaS = 0;
  for (const [coefficient, power] of terms) viscosityMicroPaS += coefficient * ratio ** power;
  return viscosityMicroPaS * 1e-6;
}

/** Kinematic viscosity of liquid water at atmospheric pressure [m2/s]; 0 to 95 °C. */
export function waterViscosityM2S(waterC: number): number {
  return waterViscosityPaS(waterC) / waterDensityKgM3(waterC);
}
