import { describe, expect, it } from 'vitest';
import { waterDensityKgM3, waterHeatJKgK } from '../../controller/engine/water.ts';
import { waterViscosityM2S, waterViscosityPaS } from '../../sim/physics/water.ts';

/**
 * Liquid water at 101.325 kPa, computed from IAPWS R12-08 by an independent program: temperature [°C],
 * viscosity [uPa s]. Tolerance 0.1 %.
 */
const iapwsR1208 = [
  [0.01, 1791.1],
  [4, 1567.3],
  [10, 1305.9],
  [20, 1001.6],
  [25, 890.0],
  [30, 797.2],
  [40, 652.7],
  [50, 546.5],
  [60, 466.0],
  [70, 403.6],
  [90, 314.2],
] as const;

describe('viscosity of water', () => {
  it.each(iapwsR1208)('at %d °C', (waterC, viscosityMicroPaS) => {
    expect(Math.abs((waterViscosityPaS(waterC) * 1e6) / viscosityMicroPaS - 1)).toBeLessThan(1e-3);
  });
  // IAPWS R12-08, table of check values, published: 298.15 K and 998 kg/m3, 0.1 % denser than here.
  it('is 889.7351 uPa s at 298.15 K', () => {
    expect(Math.abs((waterViscosityPaS(25) * 1e6) / 889.7351 - 1)).toBeLessThan(1e-3);
  });
  it('is 1.0034e-6 m2/s at 20 °C', () => {
    expect(Math.abs(waterViscosityM2S(20) / 1.0034e-6 - 1)).toBeLessThan(1e-3);
  });
});

/** Liquid at 0.1 MPa and 298.15 K, published by IAPWS with SR6-08: 997.047013 kg/m3, 4.181446 kJ/kgK. */
it('density and heat capacity at 25 °C', () => {
  expect(Math.abs(waterDensityKgM3(25) - 997.047013)).toBeLessThan(0.02);
  expect(Math.abs(waterHeatJKgK(25) / 1000 - 4.181446)).toBeLessThan(0.0025);
});
