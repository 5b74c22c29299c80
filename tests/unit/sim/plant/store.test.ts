import { describe, expect, it } from 'vitest';
import { drawOff, exchangeHeat, layerFor, mixByBuoyancy } from '../../../../sim/plant/store.ts';
import { loseHeat, totalJ, totalKg } from '../../../../sim/plant/water.ts';

const layers = (...temperatures: number[]) => temperatures.map((waterC) => ({ massKg: 100, waterC }));
const temperatures = (store: { waterC: number }[]) => store.map(({ waterC }) => waterC);

describe('store', () => {
  const mixes = [
    ['leaves a stable store', [50, 40, 30], [50, 40, 30]],
    ['mixes one pair', [50, 30, 40], [50, 35, 35]],
    ['mixes on upwards when the mixture is still too warm', [40, 30, 50], [40, 40, 40]],
    ['mixes an upside-down store wholly', [10, 20, 30], [20, 20, 20]],
    ['mixes two places apart from each other', [60, 50, 52, 20, 30], [60, 51, 51, 25, 25]],
  ] as const;
  it.each(mixes)('%s', (_, before, after) => {
    const store = layers(...before);
    mixByBuoyancy(store);
    expect(temperatures(store)).toEqual(after);
  });

  it('lets water come to rest at its like', () => {
    const store = layers(50, 40, 30);
    expect([60, 50, 45, 40, 35, 10].map((waterC) => layerFor(store, waterC))).toEqual([0, 0, 1, 1, 2, 2]);
  });

  it('draws a day of hot water from the top and makes it up at the bottom', () => {
    const store = layers(35, 35, 35);
    let drawnKg = 0;
    let balanceJ = totalJ(store);
    for (let s = 0; s < 86_400; s += 5) {
      const drawn = drawOff(store, 75, s / 3600, 5);
      drawnKg += drawn.massKg;
      balanceJ += drawn.madeUpJ - drawn.drawnJ;
    }
    expect(drawnKg).toBeCloseTo(75, 6);
    expect(totalKg(store)).toBeCloseTo(300, 9);
    expect(totalJ(store) / balanceJ).toBeCloseTo(1, 12);
    expect(store[2]?.waterC).toBeLessThan(store[0]?.waterC ?? 0);
  });

  it('draws less from a hotter store, so that the tap stays at 40 C', () => {
    const massAt = (waterC: number) => drawOff(layers(waterC, waterC), 100, 7.5, 60).massKg;
    expect(massAt(66) / massAt(30)).toBeCloseTo((40 - 14) / (66 - 14), 2);
  });

  it('draws nothing at night', () => {
    expect(drawOff(layers(40, 40), 100, 2, 60)).toEqual({ drawnJ: 0, madeUpJ: 0, massKg: 0 });
  });

  it('passes heat through an exchanger from the warmer to the colder, never past even', () => {
    const from = { massKg: 100, waterC: 60 };
    const into = { massKg: 100, waterC: 20 };
    const heatJ = exchangeHeat(from, into, 1e9, 3600);
    expect(from.waterC).toBeCloseTo(40, 3);
    expect(into.waterC).toBeCloseTo(40, 3);
    expect(heatJ / (100 * 4184 * 20)).toBeCloseTo(1, 4);
    expect(exchangeHeat({ massKg: 1, waterC: 10 }, { massKg: 1, waterC: 20 }, 10, 5)).toBeLessThan(0);
  });

  it('cools as an exponential when steps are short', () => {
    const store = layers(60, 60);
    let lostJ = 0;
    for (let s = 0; s < 3600; s += 5) lostJ += loseHeat(store, 100, 20, 5);
    const exact = 20 + 40 * Math.exp((-100 * 3600) / (200 * 4184));
    // The implicit step errs by half a step of the rate: 5 s in 8368 s, times the fall of 14 K.
    expect(Math.abs((store[0]?.waterC ?? 0) - exact)).toBeLessThan(0.005);
    expect(lostJ / (200 * 4184 * (60 - (store[0]?.waterC ?? 0)))).toBeCloseTo(1, 10);
  });
});
