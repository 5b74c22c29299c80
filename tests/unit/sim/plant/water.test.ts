import { describe, expect, it } from 'vitest';
import { loseHeat, type Row, rowJ, rowKg, settleIce } from '../../../../sim/plant/water.ts';

const cell = (massKg: number, waterC: number, iceKg = 0): Row => ({
  massKg: [massKg],
  waterC: [waterC],
  iceKg: [iceKg],
});

describe('freezing and thawing', () => {
  it('freezes as much as its cold pays for, at 0 C', () => {
    const water = cell(10, -4);
    settleIce(water);
    // 10 kg, 4 K, 4184 J/kgK over 333.5 kJ/kg.
    expect(water.iceKg[0]).toBeCloseTo((10 * 4 * 4184) / 333_500, 12);
    expect(water.waterC[0]).toBe(0);
  });

  it('thaws before it warms', () => {
    const ice = cell(9, 5, 1);
    settleIce(ice);
    expect(ice.iceKg[0]).toBeGreaterThan(0);
    expect(ice.iceKg[0]).toBeLessThan(1);
    expect(ice.waterC[0]).toBe(0);
    const warm = cell(9, 20, 1);
    settleIce(warm);
    expect(warm.iceKg[0]).toBe(0);
    expect(warm.waterC[0]).toBeGreaterThan(5);
  });

  it('cools on as ice once all but a twentieth is frozen', () => {
    const cold = cell(10, -120);
    settleIce(cold);
    expect(cold.iceKg[0]).toBeCloseTo(9.5, 12);
    expect(cold.waterC[0]).toBeLessThan(-10);
  });

  it.each([
    [10, -4, 0],
    [9, 5, 1],
    [9, 20, 1],
    [10, -120, 0],
    [0.5, -30, 9.5],
    [1, 3, 0],
    [0, -3, 0],
  ])('keeps mass and heat of %d kg at %d C with %d kg of ice', (massKg, waterC, iceKg) => {
    const water = cell(massKg, waterC, iceKg);
    const beforeJ = rowJ(water);
    settleIce(water);
    expect(rowKg(water)).toBeCloseTo(massKg + iceKg, 12);
    expect(Math.abs(rowJ(water) - beforeJ)).toBeLessThan(1e-6);
  });
});

describe('loss to the air', () => {
  it('cools as an exponential when steps are short', () => {
    const store: Row = { massKg: [100, 100], waterC: [60, 60], iceKg: [0, 0] };
    let lostJ = 0;
    for (let s = 0; s < 3600; s += 5) lostJ += loseHeat(store, 100, 20, 5);
    const exact = 20 + 40 * Math.exp((-100 * 3600) / (200 * 4184));
    // The implicit step errs by half a step of the rate: 5 s in 8368 s, times the fall of 14 K.
    expect(Math.abs((store.waterC[0] ?? 0) - exact)).toBeLessThan(0.005);
    expect(lostJ / (200 * 4184 * (60 - (store.waterC[0] ?? 0)))).toBeCloseTo(1, 10);
  });
});
