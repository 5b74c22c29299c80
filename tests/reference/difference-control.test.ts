import { describe, expect, it } from 'vitest';
import { removalFactor, stabilityOf, stableFraction } from '../../controller/engine/pair/stability.ts';
import { defaultSettings } from '../../shared-types/settings.ts';
import { makeSite } from '../unit/engine/rig.ts';

/**
 * The condition between stop and start difference, Duffie & Beckman, Solar Engineering of Thermal Processes,
 * section 10.4, from memory. The numbers were computed from it by another program; half a unit of the last
 * digit is allowed.
 */
describe('the stability condition between start and stop difference', () => {
  it.each([
    [2, 0.797, 8, 125.7, 0.101448, 1, 9.8573],
    [20, 0.95, 22, 1673.6, 0.249761, 2, 8.0077],
  ])('A %d m2, FR %d, UL %d W/m2K, m cp %d W/K: %d; for a stop at %d K a start at %d K', (...row) => {
    const [areaM2, removal, lossWM2K, streamWK, fraction, stopK, startK] = row;
    const found = stableFraction({ areaM2, lossWM2K, streamWK }, removal);
    expect(Math.abs(found - fraction)).toBeLessThan(5e-7);
    expect(Math.abs(stopK / found - startK)).toBeLessThan(5e-5);
  });

  it('uses the heat removal factor of the example, 0.81193 (section 6.7, computed from its equation)', () => {
    const stream = { areaM2: 1.5, lossWM2K: 6.5, streamWK: 41.86 };
    expect(Math.abs(removalFactor(stream, 0.9) - 0.81193)).toBeLessThan(5e-6);
  });

  it('gives the efficiency factor for ample flow, and the whole stream for none', () => {
    expect(removalFactor({ areaM2: 2, lossWM2K: 8, streamWK: 1e9 }, 0.841)).toBeCloseTo(0.841, 6);
    expect(removalFactor({ areaM2: 2, lossWM2K: 8, streamWK: 0.01 }, 0.841)).toBeCloseTo(0.01 / 16, 12);
  });
});

describe('the condition for a loop', () => {
  const site = makeSite('drain-valve');
  const usual = { ...defaultSettings, startDifferenceK: 6, stopDifferenceK: 2 };
  // 10 m2 at 18.5 W/m2K and 20 L/min of 4179.8 J/kgK and 995.65 kg/m3: 185 and 1387.2 W/K.
  const fraction = 1 - Math.exp((-185 * 0.93) / 1387.2);

  it('names the least start difference that satisfies it, rounded up to a tenth', () => {
    const found = stabilityOf(site, usual, {});
    expect(found.leastStartDifferenceK).toBe(Math.ceil((2 / fraction) * 10) / 10);
    expect(found.holds).toBe(false);
  });

  it('holds from there on', () => {
    const { leastStartDifferenceK } = stabilityOf(site, usual, {});
    const at = (startDifferenceK: number) => stabilityOf(site, { ...usual, startDifferenceK }, {});
    expect(at(leastStartDifferenceK).holds).toBe(true);
    expect(at(leastStartDifferenceK - 0.01).holds).toBe(false);
  });

  it('takes the flow that was learnt in place of the rated one', () => {
    const half = stabilityOf(site, usual, { fullFlowLMin: 10 });
    const less = 1 - Math.exp((-185 * 0.93) / 693.6);
    expect(half.leastStartDifferenceK).toBe(Math.ceil((2 / less) * 10) / 10);
  });
});
