import { describe, expect, it } from 'vitest';
import { rowJ } from '../../sim/plant/water.ts';

/** Heat of fusion, published values: 333.43 kJ/kg, 333.55 in older handbooks; 333.4 to 333.6 is accepted. */
describe('ice', () => {
  it('gives 333.5 kJ less than as much water at 0 °C', () => {
    const water = rowJ({ massKg: [1], waterC: [0], iceKg: [0] });
    const ice = rowJ({ massKg: [0], waterC: [0], iceKg: [1] });
    expect(Math.abs((water - ice) / 1000 - 333.5)).toBeLessThan(0.1 + 1e-9);
  });
});
