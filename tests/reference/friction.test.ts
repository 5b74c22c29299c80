import { describe, expect, it } from 'vitest';
import { frictionFactor, haalandFactor, pipeLossPa, reynoldsNumber } from '../../sim/physics/friction.ts';

/** Half a unit of the last printed digit. */
const half = (digits: number) => 0.5 * 10 ** -digits + 1e-12;

/**
 * Reynolds number, relative roughness, Colebrook's factor, Haaland's factor: computed from the published
 * equations by an independent program.
 */
const factors = [
  [4000, 0, 0.039907, 0.040423],
  [1e4, 0, 0.030883, 0.030886],
  [1e5, 0, 0.01799, 0.017825],
  [1e5, 1e-3, 0.022175, 0.021966],
  [1e6, 1e-4, 0.013441, 0.013326],
] as const;

describe('friction factor', () => {
  it.each(factors)('at Re %d and roughness %d', (reynolds, roughness, colebrook, haaland) => {
    expect(Math.abs(frictionFactor(reynolds, roughness) - colebrook)).toBeLessThan(half(6));
    expect(Math.abs(haalandFactor(reynolds, roughness) - haaland)).toBeLessThan(half(6));
  });
});

const footM = 0.3048;
const poundLbKg = 0.45359237;
const psiPa = 6894.757;

/**
 * Cengel & Cimbala, Fluid Mechanics, example of a stainless steel pipe: water of 60 F, 2 in by 200 ft,
 * roughness 7e-6 ft, 0.2 ft3/s. Printed values and the water's properties (62.36 lb/ft3,
 * 7.536e-4 lb/ft s) are from memory.
 */
describe('the pipe of 2 in and 200 ft', () => {
  const densityKgM3 = (62.36 * poundLbKg) / footM ** 3;
  const viscosityM2S = (7.536e-4 / 62.36) * footM ** 2;
  const insideM = footM / 6;
  const flowM3S = 0.2 * footM ** 3;
  const velocityMs = flowM3S / ((Math.PI / 4) * insideM ** 2);
  const lossPa = pipeLossPa({
    flowKgS: flowM3S * densityKgM3,
    insideM,
    lengthM: 200 * footM,
    roughnessM: 7e-6 * footM,
    densityKgM3,
    viscosityM2S,
  });

  it('flows at 9.17 ft/s, with Re 126400 and a factor of 0.0174', () => {
    const reynolds = reynoldsNumber(velocityMs, insideM, viscosityM2S);
    expect(Math.abs(velocityMs / footM - 9.17)).toBeLessThan(half(2));
    expect(Math.abs(reynolds - 126_400)).toBeLessThan(50);
    expect(Math.abs(frictionFactor(reynolds, 4.2e-5) - 0.0174)).toBeLessThan(half(4));
  });

  it('loses 11.8 psi, or 461 W', () => {
    expect(Math.abs(lossPa / psiPa - 11.8)).toBeLessThan(half(1));
    // The printed power follows from the rounded pressure: 0.2 ft3/s times 11.8 psi is 460.8 W.
    expect(Math.abs(11.8 * psiPa * flowM3S - 461)).toBeLessThan(half(0));
  });
});

/** A smooth 20 mm pipe of 20 m at 20 °C: flow [L/min], factor, loss [Pa]; computed by an independent program. */
describe('a 20 mm pipe of 20 m', () => {
  const rows = [
    [10, 0.0305499, 7, 4291.36, 2],
    [2, 0.0302618, 7, 170.036, 3],
  ] as const;
  it.each(rows)('%d L/min', (flowLMin, factor, factorDigits, lossPa, lossDigits) => {
    const densityKgM3 = 998.2;
    const viscosityM2S = 1.0034e-6;
    const flowKgS = (flowLMin / 60_000) * densityKgM3;
    const velocityMs = flowLMin / 60_000 / ((Math.PI / 4) * 0.02 ** 2);
    const pipe = { insideM: 0.02, lengthM: 20, roughnessM: 1.5e-6, densityKgM3, viscosityM2S };
    const reynolds = reynoldsNumber(velocityMs, 0.02, viscosityM2S);
    expect(Math.abs(frictionFactor(reynolds, 7.5e-5) - factor)).toBeLessThan(half(factorDigits));
    expect(Math.abs(pipeLossPa({ ...pipe, flowKgS }) - lossPa)).toBeLessThan(half(lossDigits));
  });
});
