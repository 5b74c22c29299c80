import { describe, expect, it } from 'vitest';
import { drainTimeS, gravityFlowKgS, orificeKgS } from '../../sim/physics/draining.ts';
import { frictionFactor } from '../../sim/physics/friction.ts';
import { depthPa, gravityMS2 } from '../../sim/physics/gravity.ts';

/** Half a unit of the last printed digit. */
const half = (digits: number) => 0.5 * 10 ** -digits + 1e-9;

const footM = 0.3048;
const circleM2 = (insideM: number) => (Math.PI / 4) * insideM ** 2;

/**
 * Cengel & Cimbala, Fluid Mechanics, example of a tank that drains: 3 ft wide, a jet of half an inch.
 * Printed values from memory. The book has 32.2 ft/s2 for gravity, 0.04 % more in the time than here.
 */
describe('a tank of 3 ft with a jet of 0.5 in', () => {
  const seconds = (fromFt: number, toFt: number) =>
    drainTimeS(circleM2(3 * footM), footM / 24, fromFt * footM, toFt * footM, 1);
  it('falls from 4 to 2 ft in 757 s', () => {
    expect(Math.abs(seconds(4, 2) - 757)).toBeLessThan(half(0));
  });
  it('is empty in 43.1 min', () => {
    expect(Math.abs(seconds(4, 0) / 60 - 43.1)).toBeLessThan(half(1));
  });
});

/** A pan of 10 m2 with a hole of 20 mm, coefficient 0.62; computed by an independent program. */
describe('a pan of 10 m2 with a hole of 20 mm', () => {
  it('falls from 40 mm to nothing in 4637.064 s, to 10 mm in half of that', () => {
    expect(Math.abs(drainTimeS(10, 0.02, 0.04, 0, 0.62) - 4637.064)).toBeLessThan(half(3));
    expect(Math.abs(drainTimeS(10, 0.02, 0.04, 0.01, 0.62) - 2318.532)).toBeLessThan(half(3));
  });
  it('loses what the flow through the hole takes', () => {
    const pieces = 4000;
    let kg = 0;
    for (let i = 0; i < pieces; i++) {
      const fromM = 0.04 - (0.03 * i) / pieces;
      const toM = fromM - 0.03 / pieces;
      kg += orificeKgS((fromM + toM) / 2, 0.02, 0.62) * drainTimeS(10, 0.02, fromM, toM, 0.62);
    }
    // 10 m2 by 30 mm of water at 20 °C; a third of a gram is what summing by pieces leaves over.
    expect(Math.abs(kg - 300 * 0.998207)).toBeLessThan(0.002);
  });
});

/** 40 mm of water, computed by an independent program with 998.2 kg/m3. */
it('40 mm of water weigh 39.928 kg/m2 and press with 391.560 Pa', () => {
  expect(Math.abs(depthPa(0.04, 998.2) - 391.56)).toBeLessThan(half(3));
  expect(Math.abs(depthPa(0.04, 998.2) / gravityMS2 - 39.928)).toBeLessThan(half(3));
});

/** Bernoulli with friction, solved for the flow: put back into the equation, the drop must come out. */
describe('a drain line that runs full', () => {
  const rows = [
    [1.2, 0.04, 6.2, 1.5e-6],
    [0.2, 0.025, 12, 1.5e-6],
    [3, 0.02, 30, 1e-4],
  ] as const;
  it.each(rows)('a drop of %d m, %d m wide, %d m long', (dropM, insideM, lengthM, roughnessM) => {
    const flowKgS = gravityFlowKgS({ dropM, insideM, lengthM, roughnessM, entranceLoss: 0.5 });
    const velocityMs = flowKgS / 998.207 / circleM2(insideM);
    // Viscosity of water at 20 °C: 1001.6 uPa s, IAPWS R12-08.
    const reynolds = (velocityMs * insideM * 998.207) / 1001.6e-6;
    const factor = frictionFactor(reynolds, roughnessM / insideM);
    const heads = 1 + 0.5 + (factor * lengthM) / insideM;
    // 1e-5: density and viscosity here are rounded ones.
    expect(Math.abs((heads * velocityMs ** 2) / (2 * gravityMS2) / dropM - 1)).toBeLessThan(1e-5);
  });
});
