import { describe, expect, it } from 'vitest';
import { exchangeHeat } from '../../../../sim/plant/exchanger.ts';
import { createPlant, type PlantOptions, type PlantState } from '../../../../sim/plant/state.ts';
import {
  bringHome,
  conductAndLose,
  drawOff,
  evenLayers,
  mixByBuoyancy,
  spill,
} from '../../../../sim/plant/store.ts';
import { rowJ, rowKg } from '../../../../sim/plant/water.ts';
import { plumbedSite } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const row = (...waterC: number[]) => ({
  massKg: waterC.map(() => 100),
  waterC,
  iceKg: waterC.map(() => 0),
});
const demo = (options: Partial<PlantOptions> = {}, waterC = 30) =>
  createPlant(siteOf(demoContent()), { waterC, panC: 10, ...options });
/** Lets the store lie in layers from warm above to cold below. */
function layered(plant: PlantState, topC: number, bottomC: number): PlantState {
  const last = plant.store.waterC.length - 1;
  for (const i of plant.store.waterC.keys()) plant.store.waterC[i] = topC + ((bottomC - topC) * i) / last;
  return plant;
}

describe('buoyancy', () => {
  const mixes = [
    ['leaves a stable store', [50, 40, 30], [50, 40, 30]],
    ['mixes one pair', [50, 30, 40], [50, 35, 35]],
    ['mixes on upwards when the mixture is still too warm', [40, 30, 50], [40, 40, 40]],
    ['mixes an upside-down store wholly', [10, 20, 30], [20, 20, 20]],
    ['mixes two places apart from each other', [60, 50, 52, 20, 30], [60, 51, 51, 25, 25]],
  ] as const;
  it.each(mixes)('%s', (_, before, after) => {
    const store = row(...before);
    mixByBuoyancy(store);
    expect(store.waterC).toEqual(after);
  });
});

describe('water that comes home', () => {
  const bring = (waterC: number, options: Partial<PlantOptions> = {}) => {
    const plant = layered(demo(options), 52, 30);
    const heldJ = rowJ(plant.store);
    bringHome(plant, 50, waterC);
    evenLayers(plant.store);
    expect((rowJ(plant.store) - heldJ) / (50 * 4184 * waterC)).toBeCloseTo(1, 9);
    return plant.store.waterC;
  };

  it('stays on top when it is the warmest', () => {
    expect(bring(70)[0]).toBeGreaterThan(56);
  });

  it('sinks to its like when it is colder', () => {
    const sunk = bring(20, { traits: { inletMixingFraction: 0 } });
    expect(sunk[0]).toBeCloseTo(52, 0);
    expect(sunk.at(-1)).toBeLessThan(26);
  });

  it('comes to rest the warmer when it takes along some of the layers that it sinks through', () => {
    const bottomC = (inletMixingFraction: number) => bring(20, { traits: { inletMixingFraction } })[11] ?? 0;
    expect(bottomC(0.15)).toBeGreaterThan(bottomC(0) + 2);
  });

  it('runs over when there is no room', () => {
    const plant = demo();
    bringHome(plant, 700, 50);
    evenLayers(plant.store);
    const over = spill(plant);
    expect(over.massKg).toBeCloseTo(898.38 + 700 - plant.parts.store.brimKg, 6);
    expect(rowKg(plant.store)).toBeCloseTo(plant.parts.store.brimKg, 6);
  });
});

describe('draw-off', () => {
  const drawn = (plant: PlantState, wantedKg: number) => {
    const drawnOff = drawOff(plant, wantedKg);
    evenLayers(plant.store);
    return drawnOff;
  };

  it('takes from the top and makes up at the bottom', () => {
    const plant = demo({}, 35);
    let balanceJ = rowJ(plant.store);
    for (let i = 0; i < 500; i++) {
      const { madeUpJ, drawnJ } = drawn(plant, 0.3);
      balanceJ += madeUpJ - drawnJ;
    }
    expect(rowKg(plant.store)).toBeCloseTo(898.38, 6);
    expect(rowJ(plant.store) / balanceJ).toBeCloseTo(1, 12);
    expect(plant.store.waterC[11]).toBeLessThan((plant.store.waterC[0] ?? 0) - 15);
  });

  it('takes less from a hotter store, so that the tap keeps its temperature', () => {
    expect(drawn(demo({}, 66), 10).massKg / 10).toBeCloseTo((40 - 14) / (66 - 14), 9);
    expect(drawn(demo({}, 30), 10).massKg).toBe(10);
  });

  it('takes nothing when nothing is wanted, or when the tap wants less than the cold water is', () => {
    expect(drawn(demo(), 0)).toEqual({ massKg: 0, drawnJ: 0, madeUpJ: 0 });
    expect(drawn(demo({ traits: { tapC: 12 } }), 10).massKg).toBe(0);
    expect(drawn(demo({ traits: { tapC: 20, makeUpC: 32 } }, 31), 10).massKg).toBe(0);
  });

  it('takes no more than there is', () => {
    const plant = demo();
    const heldKg = rowKg(plant.store);
    expect(drawn(plant, 5000).massKg).toBeCloseTo(heldKg, 9);
    expect(rowKg(plant.store)).toBeCloseTo(heldKg, 9);
  });
});

describe('a store left alone', () => {
  it('loses heat to the air through all of its layers', () => {
    const plant = demo({}, 60);
    let lostJ = 0;
    for (let s = 0; s < 86_400; s += 10) lostJ += conductAndLose(plant, 20, 10);
    const exactC = 20 + 40 * Math.exp((-6 * 86_400) / (898.38 * 4184));
    // A step of 10 s errs by half a step in the time constant of seven days.
    expect(Math.abs((plant.store.waterC[5] ?? 0) - exactC)).toBeLessThan(0.001);
    expect(lostJ / (898.38 * 4184 * (60 - (plant.store.waterC[5] ?? 0)))).toBeCloseTo(1, 6);
  });

  it('conducts heat down its layers without making any', () => {
    const plant = layered(demo({ traits: { storeConductionWMK: 50 } }), 60, 20);
    plant.store.waterC.fill(60, 0, 6);
    plant.store.waterC.fill(20, 6);
    const heldJ = rowJ(plant.store);
    let lostJ = 0;
    for (let s = 0; s < 36_000; s += 10) lostJ += conductAndLose(plant, 40, 10);
    expect(plant.store.waterC[5]).toBeLessThan(55);
    expect(plant.store.waterC[6]).toBeGreaterThan(25);
    expect((rowJ(plant.store) + lostJ) / heldJ).toBeCloseTo(1, 10);
  });
});

describe('the exchanger of a drain-back reservoir', () => {
  const plant = (reservoirC: number, storeC: number) => {
    const made = createPlant(plumbedSite('reservoir', 'low', 'pump-stop'), { waterC: storeC, panC: 10 });
    if (made.reservoir !== null) made.reservoir.waterC[0] = reservoirC;
    return made;
  };
  const run = (loop: PlantState, pumpOn: boolean, seconds: number) => {
    let heatJ = 0;
    for (let s = 0; s < seconds; s += 10) {
      heatJ += exchangeHeat(loop, pumpOn, 10);
      evenLayers(loop.store);
    }
    return heatJ;
  };

  it('passes what the reservoir loses to the store, to rounding', () => {
    for (const pumpOn of [true, false]) {
      const loop = plant(60, 20);
      const heldJ = rowJ(loop.store);
      const heatJ = run(loop, pumpOn, 1800);
      expect(heatJ).toBeGreaterThan(0);
      expect(rowJ(loop.store) - heldJ).toBeCloseTo(heatJ, -1);
    }
  });

  it('passes little without its pump, and nothing behind a check valve', () => {
    expect(run(plant(60, 20), true, 1800)).toBeGreaterThan(3 * run(plant(60, 20), false, 1800));
    const valved = createPlant(plumbedSite('reservoir', 'low', 'pump-stop'), {
      waterC: 20,
      panC: 10,
      traits: { restExchangeFraction: 0 },
    });
    if (valved.reservoir !== null) valved.reservoir.waterC[0] = 60;
    expect(run(valved, false, 1800)).toBe(0);
  });

  it('evens out and never goes past even', () => {
    const loop = plant(60, 20);
    run(loop, true, 200_000);
    const reservoirC = loop.reservoir?.waterC[0] ?? Number.NaN;
    expect(reservoirC - (loop.store.waterC[11] ?? 0)).toBeCloseTo(0, 1);
    expect(reservoirC).toBeGreaterThan(20);
    expect(reservoirC).toBeLessThan(60);
  });

  it('cools a warm store into a cold reservoir', () => {
    expect(run(plant(10, 50), true, 600)).toBeLessThan(0);
  });
});
