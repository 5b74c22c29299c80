import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gravityFlowKgS, orificeKgS } from '../../../../sim/physics/draining.ts';
import { frictionFactor, pipeLossPa } from '../../../../sim/physics/friction.ts';
import { pumpHeadM } from '../../../../sim/physics/pump.ts';

/** A whole number of steps between two ends. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((n) => least + ((most - least) * n) / 10_000);

describe('friction', () => {
  it('has no step where laminar ends and turbulent begins', () => {
    for (const reynolds of [2300, 4000]) {
      const jump = frictionFactor(reynolds + 0.01, 1e-4) - frictionFactor(reynolds - 0.01, 1e-4);
      expect(Math.abs(jump)).toBeLessThan(1e-6);
    }
  });

  it('takes more pressure from more flow, in every kind of flow', () => {
    fc.assert(
      fc.property(between(100, 20_000), between(0, 0.02), (reynolds, roughness) => {
        const lossAt = (re: number) => frictionFactor(re, roughness) * re ** 2;
        expect(lossAt(reynolds * 1.001)).toBeGreaterThan(lossAt(reynolds));
      }),
    );
  });

  it('takes nothing without flow', () => {
    const pipe = { insideM: 0.02, lengthM: 10, roughnessM: 0, densityKgM3: 998, viscosityM2S: 1e-6 };
    expect(pipeLossPa({ ...pipe, flowKgS: 0 })).toBe(0);
  });
});

describe('a drain line', () => {
  it('passes more through a wider, steeper or shorter pipe, and never more than free fall', () => {
    fc.assert(
      fc.property(between(0.05, 4), between(0.01, 0.1), between(0.5, 40), (dropM, insideM, lengthM) => {
        const pipe = { dropM, insideM, lengthM, roughnessM: 1.5e-6, entranceLoss: 0.5 };
        const flowKgS = gravityFlowKgS(pipe);
        expect(gravityFlowKgS({ ...pipe, insideM: insideM * 1.1 })).toBeGreaterThan(flowKgS);
        expect(gravityFlowKgS({ ...pipe, dropM: dropM * 1.1 })).toBeGreaterThan(flowKgS);
        expect(gravityFlowKgS({ ...pipe, lengthM: lengthM * 1.1 })).toBeLessThan(flowKgS);
        expect(flowKgS).toBeLessThan(orificeKgS(dropM, insideM, 1));
      }),
      { numRuns: 60 },
    );
  });

  it('passes less of cold water, which is thicker', () => {
    const pipe = { dropM: 1, insideM: 0.02, lengthM: 10, roughnessM: 1.5e-6, entranceLoss: 0.5 };
    expect(gravityFlowKgS({ ...pipe, waterC: 2 })).toBeLessThan(gravityFlowKgS({ ...pipe, waterC: 40 }));
  });

  it('passes nothing upwards', () => {
    const pipe = { insideM: 0.04, lengthM: 5, roughnessM: 1.5e-6, entranceLoss: 0.5 };
    expect(gravityFlowKgS({ ...pipe, dropM: 0 })).toBe(0);
    expect(gravityFlowKgS({ ...pipe, dropM: -1 })).toBe(0);
    expect(orificeKgS(-0.1, 0.04, 0.6)).toBe(0);
  });
});

describe('a pump', () => {
  it('gives less head at more flow and at less speed', () => {
    fc.assert(
      fc.property(between(0.1, 2), between(0.2, 1), (flow, speed) => {
        expect(pumpHeadM(flow, speed, 3)).toBeLessThan(pumpHeadM(flow * 0.9, speed, 3));
        expect(pumpHeadM(flow, speed * 0.9, 3)).toBeLessThan(pumpHeadM(flow, speed, 3));
      }),
    );
  });
});
