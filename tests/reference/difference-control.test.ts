import { describe, expect, it } from 'vitest';
import { stabilityOf } from '../../controller/engine/pair/stability.ts';
import { defaultSettings } from '../../shared-types/settings.ts';
import { makeSite } from '../unit/engine/rig.ts';

/** The condition itself is held to its published form in collector-theory.test.ts. */
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
