import { describe, expect, it } from 'vitest';
import { flowFactor, heatRemovalFactor } from '../../controller/engine/pair/heat-removal.ts';
import { leastStartDifferenceK } from '../../controller/engine/pair/stability.ts';
import { finEfficiency } from '../../sim/physics/fin.ts';
import { efficiencyFactor } from '../../sim/physics/heat-removal.ts';

/** Half a unit of the last printed digit. */
const half = (digits: number) => 0.5 * 10 ** -digits + 1e-12;

/** Duffie & Beckman, Solar Engineering of Thermal Processes, example 6.5.1, printed values from memory. */
describe('a plate of 0.5 mm with a tube of 10 mm each 150 mm', () => {
  const sheetConductanceWK = 385 * 0.0005;
  it('has a fin efficiency of 0.937', () => {
    expect(Math.abs(finEfficiency((0.15 - 0.01) / 2, 8, sheetConductanceWK) - 0.937)).toBeLessThan(half(3));
  });
  it("has an efficiency factor F' of 0.841", () => {
    const factor = efficiencyFactor({
      pitchM: 0.15,
      onWaterM: 0.01,
      wettedM: Math.PI * 0.01,
      lossWM2K: 8,
      sheetConductanceWK,
      contactWM2K: 300,
    });
    expect(Math.abs(factor - 0.841)).toBeLessThan(half(3));
  });
});

/** The same book, example 6.7.1, printed values from memory: FR is 0.797 to 0.798 there. */
it('2 m2 at 0.03 kg/s have a flow factor of 0.948 and a removal factor of 0.797', () => {
  const flow = { capacityRateWK: 0.03 * 4190, areaM2: 2, lossWM2K: 8, efficiencyFactor: 0.841 };
  expect(Math.abs(flowFactor(flow) - 0.948)).toBeLessThan(half(3));
  const removal = heatRemovalFactor(flow);
  expect(removal).toBeGreaterThan(0.797 - half(3));
  expect(removal).toBeLessThan(0.798 + half(3));
});

/** Computed by an independent program. */
describe('1.5 m2 at 41.86 W/K', () => {
  const flow = { capacityRateWK: 41.86, areaM2: 1.5, lossWM2K: 6.5, efficiencyFactor: 0.9 };
  it('has the factors 0.90214 and 0.81193 at 4.7704 capacity rates to a loss', () => {
    const rates = flow.capacityRateWK / (flow.areaM2 * flow.lossWM2K * flow.efficiencyFactor);
    expect(Math.abs(rates - 4.7704)).toBeLessThan(half(4));
    expect(Math.abs(flowFactor(flow) - 0.90214)).toBeLessThan(half(5));
    expect(Math.abs(heatRemovalFactor(flow) - 0.81193)).toBeLessThan(half(5));
  });
  it("removes by F' at a very large flow, and by the flow alone at a very small one", () => {
    expect(heatRemovalFactor({ ...flow, capacityRateWK: 1e12 })).toBeCloseTo(0.9, 9);
    const capacityRateWK = 0.01;
    const removal = heatRemovalFactor({ ...flow, capacityRateWK });
    expect(removal / (capacityRateWK / (flow.areaM2 * flow.lossWM2K))).toBeCloseTo(1, 12);
  });
});

/**
 * Duffie & Beckman, section 10.4, from memory and derived again; values computed by an independent program.
 * A paper that prints the start difference in the denominator has its dimension wrong.
 */
describe('least start difference', () => {
  const rows = [
    [{ areaM2: 2, heatRemovalFactor: 0.797, lossWM2K: 8, capacityRateWK: 125.7 }, 1, 0.101448, 9.8573],
    [{ areaM2: 20, heatRemovalFactor: 0.95, lossWM2K: 22, capacityRateWK: 1673.6 }, 2, 0.249761, 8.0077],
  ] as const;
  it.each(rows)('of %o for a stop difference of %d K', (loop, stopK, ratio, startK) => {
    expect(Math.abs(leastStartDifferenceK(loop, stopK) - startK)).toBeLessThan(half(4));
    expect(Math.abs(stopK / leastStartDifferenceK(loop, stopK) - ratio)).toBeLessThan(half(6));
  });
});
