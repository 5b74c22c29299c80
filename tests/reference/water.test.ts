import { describe, expect, it } from 'vitest';
import {
  streamHeatW,
  waterDensityKgM3,
  waterEnthalpyJKg,
  waterHeatJKgK,
} from '../../controller/engine/water.ts';

/**
 * The enthalpies are those that the engine's polynomial was fitted through; heat capacities, densities and
 * the coefficients further down took no part in the fit.
 *
 * Liquid water at 101.325 kPa, computed from the IAPWS-95 formulation (IAPWS R6-95) by an independent
 * program: temperature [°C], density [kg/m3], heat capacity [kJ/kgK], enthalpy [kJ/kg].
 */
const iapws95 = [
  [0.01, 999.844, 4.2194, 0.1032],
  [4, 999.975, 4.2075, 16.9132],
  [10, 999.703, 4.1952, 42.1187],
  [20, 998.207, 4.1841, 84.0131],
  [25, 997.048, 4.1813, 104.9293],
  [30, 995.65, 4.1798, 125.8337],
  [40, 992.216, 4.1794, 167.6243],
  [50, 988.035, 4.1813, 209.4129],
  [60, 983.196, 4.185, 251.2227],
  [70, 977.765, 4.1901, 293.0753],
  [90, 965.31, 4.2052, 376.9925],
] as const;

/**
 * Heat-meter coefficients at 0.6 MPa [MJ/m3K], computed from IAPWS-IF97 by an independent program:
 * supply [°C], return [°C], meter in the return pipe, meter in the supply pipe. The definition, volume
 * times enthalpy difference over temperature difference, is from memory.
 */
const heatMeter = [
  [30, 20, 4.174077, 4.163373],
  [40, 20, 4.172655, 4.147615],
  [60, 40, 4.147181, 4.109512],
  [90, 60, 4.121772, 4.046826],
] as const;

describe('water against IAPWS-95', () => {
  it.each(iapws95)('at %d °C', (waterC, densityKgM3, heatKJKgK) => {
    expect(Math.abs(waterDensityKgM3(waterC) - densityKgM3)).toBeLessThan(0.02);
    expect(Math.abs(waterHeatJKgK(waterC) / 1000 - heatKJKgK)).toBeLessThan(0.0025);
  });

  // 2 J/kg: what the fit through these rows leaves over.
  it.each(iapws95)('enthalpy between 0.01 and %d °C', (waterC, _density, _heat, enthalpyKJKg) => {
    const differenceJKg = waterEnthalpyJKg(waterC) - waterEnthalpyJKg(0.01);
    expect(Math.abs(differenceJKg - 1000 * (enthalpyKJKg - 0.1032))).toBeLessThan(2);
  });

  it('heat capacity is the slope of the enthalpy', () => {
    for (const waterC of [5, 33, 61, 88]) {
      const slope = (waterEnthalpyJKg(waterC + 0.01) - waterEnthalpyJKg(waterC - 0.01)) / 0.02;
      expect(waterHeatJKgK(waterC)).toBeCloseTo(slope, 4);
    }
  });

  it('is densest near 4 °C', () => {
    expect(waterDensityKgM3(3.978)).toBeGreaterThan(waterDensityKgM3(3));
    expect(waterDensityKgM3(3.978)).toBeGreaterThan(waterDensityKgM3(5));
    expect(Math.abs(waterDensityKgM3(3.978) - 999.975)).toBeLessThan(0.02);
  });
});

describe('heat of a stream against IAPWS-IF97', () => {
  // 0.05 %: at 0.6 MPa water is 0.02 % denser and holds 0.03 % less heat than at atmospheric pressure.
  it.each(heatMeter)('%d / %d °C', (supplyC, returnC, inReturn, inSupply) => {
    const flowLMin = 60_000;
    const perKelvin = (meterC: number) =>
      streamHeatW(flowLMin, supplyC, returnC, meterC) / (supplyC - returnC) / 1e6;
    expect(Math.abs(perKelvin(returnC) / inReturn - 1)).toBeLessThan(5e-4);
    expect(Math.abs(perKelvin(supplyC) / inSupply - 1)).toBeLessThan(5e-4);
  });

  it('changes its sign with the temperatures, and is nothing without flow', () => {
    expect(streamHeatW(20, 20, 30, 20)).toBe(-streamHeatW(20, 30, 20, 20));
    expect(streamHeatW(0, 60, 20, 20)).toBe(0);
  });
});

describe('outside the range', () => {
  it.each([waterDensityKgM3, waterHeatJKgK, waterEnthalpyJKg])('%o stays at its ends', (property) => {
    expect(property(-20)).toBe(property(0));
    expect(property(200)).toBe(property(95));
  });
});
