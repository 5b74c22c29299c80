import { describe, expect, it } from 'vitest';
import { addAccount, emptyAccount, unexplainedJ, unexplainedKg } from '../../../../sim/plant/account.ts';
import { advance } from '../../../../sim/plant/advance.ts';
import { fillFraction } from '../../../../sim/plant/pan.ts';
import { createPlant, plantKg } from '../../../../sim/plant/state.ts';
import { totalKg } from '../../../../sim/plant/water.ts';
import { createWeather } from '../../../../sim/weather/weather.ts';
import {
  dullNoon,
  emptying,
  live,
  plumbedSite,
  plumbings,
  pumping,
  resting,
} from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const demo = siteOf(demoContent());
const start = { waterC: 25, panC: 20 };

describe.each(plumbings)('a loop %s, outlet %s, drain %s', (...plumbing) => {
  const site = plumbedSite(...plumbing);
  const drains = plumbing[2] !== 'none';

  it('closes its books of energy and water over a day to 1e-9', () => {
    const plant = createPlant(site, start);
    const weather = createWeather({ location: site.location, seed: 3, kinds: ['broken'] });
    const sum = emptyAccount();
    for (let s = 0; s < 86_400; s += 5) {
      const conditions = weather.at(Date.UTC(2031, 5, 21, 2) + s * 1000);
      const outputs = conditions.solarHour > 8 && conditions.solarHour < 17 ? pumping : emptying;
      addAccount(sum, advance(plant, outputs, conditions, 5));
    }
    expect(sum.gainJ).toBeGreaterThan(1e8);
    expect(sum.drawnKg).toBeGreaterThan(50);
    expect(Math.abs(unexplainedJ(sum)) / sum.gainJ).toBeLessThan(1e-9);
    expect(Math.abs(unexplainedKg(sum)) / plantKg(plant)).toBeLessThan(1e-9);
  });

  it('fills from the store or the reservoir, and overflows no further than its outlet', () => {
    const plant = createPlant(site, start);
    const beforeKg = plantKg(plant);
    live(plant, pumping, 3600);
    expect(fillFraction(plant.pan, plant.parts)).toBeCloseTo(1, 6);
    expect(plantKg(plant)).toBeCloseTo(beforeKg, 6);
    const homeKg = plant.reservoir?.massKg ?? totalKg(plant.store);
    expect(homeKg).toBeLessThan(beforeKg - plant.parts.pan.fullKg);
  });

  it(drains ? 'empties wholly within its drain time' : 'cannot be emptied', () => {
    const plant = createPlant(site, { ...start, panFull: true });
    // Back through a resting pump goes no faster than the pump fills; a drain is made for a quarter of an hour.
    live(plant, emptying, plumbing[2] === 'pump-stop' ? 1300 : 900);
    expect(fillFraction(plant.pan, plant.parts)).toBe(drains ? 0 : 1);
  });
});

describe('the demo loop', () => {
  it('holds its water while it rests with the drain shut', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    live(plant, resting, 3600);
    expect(fillFraction(plant.pan, plant.parts)).toBeCloseTo(1, 12);
    expect(plant.moving.flowLMin).toBe(0);
  });

  it('fills in its fill time', () => {
    const plant = createPlant(demo, start);
    live(plant, pumping, 1080);
    expect(fillFraction(plant.pan, plant.parts)).toBeLessThan(0.92);
    live(plant, pumping, 150);
    expect(fillFraction(plant.pan, plant.parts)).toBeCloseTo(1, 6);
  });

  it('pumps no more than its store can give', () => {
    const small = siteOf(demoContent({ store: { volumeL: 481, headroomL: 520, heightM: 1 } }));
    const plant = createPlant(small, start);
    live(plant, pumping, 1800);
    expect(fillFraction(plant.pan, plant.parts)).toBeLessThan(0.99);
    expect(totalKg(plant.store)).toBeGreaterThan(0);
    expect(plant.moving.flowLMin).toBeCloseTo(0, 9);
  });

  it('runs over when it is emptied into a store without room', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    for (const layer of plant.store) layer.massKg = plant.parts.store.brimKg / plant.store.length;
    const account = live(plant, emptying, 900);
    expect(account.overflowKg).toBeCloseTo(plant.parts.pan.fullKg, 6);
  });

  it('brings home the heat of a warm pan', () => {
    const plant = createPlant(demo, { waterC: 20, panC: 45, panFull: true });
    live(plant, emptying, 900);
    expect(plant.store[0]?.waterC).toBeGreaterThan(40);
    expect(plant.store.at(-1)?.waterC).toBeLessThan(25);
  });

  it('falls below the air under a clear night sky', () => {
    const plant = createPlant(demo, { waterC: 20, panC: 8 });
    const night = { ...dullNoon, irradianceWM2: 0, airC: 4, windMs: 0.5, longWaveWM2: 240, solarHour: 3 };
    live(plant, emptying, 3600, night);
    const sheetC = plant.pan[0]?.sheetC ?? 0;
    expect(sheetC).toBeLessThan(0);
    expect(sheetC).toBeGreaterThan(-6);
  });

  it('passes heat to its water in proportion to how full it is', () => {
    const excessK = (share: number) => {
      const plant = createPlant(demo, { waterC: 20, panC: 20, panFull: true });
      for (const cell of plant.pan) cell.massKg *= share;
      live(plant, resting, 300, { ...dullNoon, irradianceWM2: 900 });
      const cell = plant.pan[0];
      return (cell?.sheetC ?? 0) - (cell?.waterC ?? 0);
    };
    // The same heat through a quarter of the contact, less what the hotter sheet loses to the air.
    expect(excessK(0.25) / excessK(1)).toBeGreaterThan(2.8);
    expect(excessK(0.25) / excessK(1)).toBeLessThan(4);
  });

  it('heats a dry sheet in the sun far above a wet one', () => {
    const noon = { ...dullNoon, irradianceWM2: 900 };
    const dry = createPlant(demo, start);
    const wet = createPlant(demo, { ...start, panFull: true });
    live(dry, emptying, 1800, noon);
    live(wet, resting, 1800, noon);
    expect((dry.pan[0]?.sheetC ?? 0) - (wet.pan[0]?.sheetC ?? 0)).toBeGreaterThan(20);
  });
});
