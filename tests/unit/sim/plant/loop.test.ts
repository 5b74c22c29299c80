import { describe, expect, it } from 'vitest';
import { openBooks, unexplainedJ, unexplainedKg } from '../../../../sim/plant/account.ts';
import { advance } from '../../../../sim/plant/advance.ts';
import { fillFraction } from '../../../../sim/plant/pan.ts';
import { createPlant, type PlantState, plantKg } from '../../../../sim/plant/state.ts';
import { rowKg } from '../../../../sim/plant/water.ts';
import { createWeather } from '../../../../sim/weather/weather.ts';
import {
  dullNoon,
  emptying,
  live,
  panKg,
  plumbedSite,
  plumbings,
  pumping,
  resting,
  withSun,
} from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const demo = siteOf(demoContent());
const start = { waterC: 25, panC: 20 };
const clearNight = { ...dullNoon, diffuseWM2: 0, irradianceWM2: 0, windMs: 0.5, solarHour: 3 };
const withPan = (pan: object, more: object = {}) =>
  siteOf(demoContent({ pan: { ...(demoContent()['pan'] as object), ...pan }, ...more }));
/** How warm water and sheet are in the middle of the pan. */
const middle = ({ pan }: PlantState) => ({
  waterC: pan.core.waterC[4] ?? Number.NaN,
  sheetC: pan.core.sheetC[4] ?? Number.NaN,
});

describe.each(plumbings)('a loop %s, outlet %s, drain %s', (...plumbing) => {
  const site = plumbedSite(...plumbing);
  const drains = plumbing[2] !== 'none';

  it('closes its books of energy and water over a day to 1e-9', () => {
    const plant = createPlant(site, start);
    const weather = createWeather({ location: site.location, seed: 3, kinds: ['broken'] });
    const books = openBooks(plant);
    for (let s = 0; s < 86_400; s += 5) {
      const conditions = weather.at(Date.UTC(2031, 5, 21, 2) + s * 1000);
      const outputs = conditions.solarHour > 8 && conditions.solarHour < 17 ? pumping : emptying;
      advance(plant, outputs, conditions, 5, [], books.account);
    }
    expect(books.account.gainJ).toBeGreaterThan(1e8);
    expect(books.account.drawnKg).toBeGreaterThan(50);
    expect(Math.abs(unexplainedJ(books, plant)) / books.account.gainJ).toBeLessThan(1e-9);
    expect(Math.abs(unexplainedKg(books, plant)) / plantKg(plant)).toBeLessThan(1e-9);
  });

  it('fills from the store or the reservoir, and overflows no further than its outlet', () => {
    const plant = createPlant(site, start);
    const beforeKg = plantKg(plant);
    const { leakedKg, overflowKg } = live(plant, pumping, 5400);
    expect(fillFraction(plant)).toBeGreaterThan(0.98);
    expect(fillFraction(plant)).toBeLessThan(1 + 1e-9);
    expect(plantKg(plant)).toBeCloseTo(beforeKg, 6);
    expect([leakedKg, overflowKg]).toEqual([0, 0]);
  });

  it(drains ? 'empties wholly within its drain time' : 'cannot be emptied', () => {
    const plant = createPlant(site, { ...start, panFull: true });
    live(plant, emptying, plumbing[2] === 'pump-stop' ? 1300 : 900);
    expect(fillFraction(plant)).toBe(drains ? 0 : 1);
  });
});

describe('water in the demo loop', () => {
  it('stays while the pan rests with the drain shut', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    live(plant, resting, 3600);
    expect(fillFraction(plant)).toBeCloseTo(1, 12);
    expect(plant.moving.flowLMin).toBe(0);
  });

  it('flows as the site file says once the pan is full and the return pipe pulls', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    live(plant, pumping, 1800);
    expect(plant.returnAirFraction).toBeLessThan(0.01);
    expect(plant.moving.flowLMin / 24).toBeCloseTo(1, 1);
  });

  it('flows less while it is lifted into the empty pan, and fills it in its fill time', () => {
    const plant = createPlant(demo, start);
    live(plant, pumping, 120);
    expect(plant.moving.flowLMin).toBeLessThan(0.95 * 24);
    expect(plant.returnAirFraction).toBe(1);
    live(plant, pumping, 880);
    expect(fillFraction(plant)).toBeLessThan(0.95);
    live(plant, pumping, 500);
    expect(fillFraction(plant)).toBeCloseTo(1, 6);
  });

  it('fills wide pipes before the pan, and then the pan', () => {
    const plant = createPlant(demo, { ...start, traits: { pipeInsideMm: 50 } });
    live(plant, pumping, 2400);
    expect(rowKg(plant.supply)).toBeCloseTo(plant.parts.pipe.fullKg, 6);
    expect(fillFraction(plant)).toBeGreaterThan(0.9);
  });

  it('rises to the wall and runs over it when the return pipe cannot carry what the pump brings', () => {
    const large = siteOf(demoContent({ store: { volumeL: 5000, headroomL: 520, heightM: 1.3 } }));
    const plant = createPlant(large, { ...start, panFull: true });
    const pipe = { ...plant.parts.pipe, gravityKgS: 0.1 };
    const narrow = { ...plant, parts: { ...plant.parts, pipe } };
    const { leakedKg } = live(narrow, pumping, 2 * 3600);
    expect(panKg(narrow)).toBeCloseTo(plant.parts.pan.wallKg, 0);
    expect(leakedKg).toBeGreaterThan(10);
  });

  it('finds less room in a pan that is half ice', () => {
    const plant = createPlant(demo, { ...start, panC: 0, panFull: true });
    for (const lane of [plant.pan.core, plant.pan.edge])
      for (const i of lane.massKg.keys()) {
        lane.iceKg[i] = 0.8 * (lane.massKg[i] ?? 0);
        lane.massKg[i] = 0.05 * (lane.massKg[i] ?? 0);
      }
    live(plant, pumping, 3600, { ...clearNight, airC: -5, longWaveWM2: 230 });
    expect(panKg(plant)).toBeLessThan(1.02 * plant.parts.pan.fullKg);
  });

  it('does not move through a frozen supply pipe', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    plant.supply.iceKg.fill(0.3 * (plant.parts.pipe.fullKg / 4));
    plant.supply.waterC.fill(0);
    live(plant, pumping, 60, { ...clearNight, airC: -10, longWaveWM2: 230 });
    expect(plant.moving.flowLMin).toBe(0);
  });

  it('pulls on after a moment without flow, and no more after a minute', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    live(plant, pumping, 1800);
    advance(plant, resting, dullNoon, 0.1);
    expect(plant.returnAirFraction).toBeLessThan(0.1);
    live(plant, resting, 120);
    expect(plant.returnAirFraction).toBe(1);
  });

  it('is pulled by a full return pipe, but not where the water of the pan lies open', () => {
    const gainLMin = (siphonPullFraction: number) => {
      const plant = createPlant(demo, { ...start, panFull: true, traits: { siphonPullFraction } });
      live(plant, pumping, 5);
      const beforeLMin = plant.moving.flowLMin;
      live(plant, pumping, 1800);
      return plant.moving.flowLMin - beforeLMin;
    };
    expect(gainLMin(1)).toBeGreaterThan(1.5);
    expect(gainLMin(0)).toBeLessThan(0.1);
  });

  it('drains through a hole no faster than Torricelli allows', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    const beforeKg = panKg(plant);
    live(plant, emptying, 60);
    // 0.6 of 50 mm under 40 mm of water: 1.04 kg/s.
    expect((beforeKg - panKg(plant)) / 60).toBeLessThan(1.05);
    expect((beforeKg - panKg(plant)) / 60).toBeGreaterThan(0.9);
  });

  it('never makes a siphon in a return pipe that is too wide for its flow', () => {
    const plant = createPlant(demo, { ...start, panFull: true, traits: { pipeInsideMm: 60 } });
    live(plant, pumping, 1800);
    expect(plant.returnAirFraction).toBe(1);
  });

  it('is not lifted at all by a pump that is too weak or too slow', () => {
    const low = createPlant(demo, start);
    live(low, { ...pumping, pumpFraction: 0.4 }, 600);
    expect(low.moving.flowLMin).toBe(0);
    expect(panKg(low)).toBe(0);
  });

  it('is pumped no further than the store can give', () => {
    const small = siteOf(demoContent({ store: { volumeL: 481, headroomL: 520, heightM: 1 } }));
    const plant = createPlant(small, start);
    live(plant, pumping, 2400);
    expect(fillFraction(plant)).toBeLessThan(0.99);
    expect(rowKg(plant.store)).toBeGreaterThan(0);
  });

  it('runs over when the pan is emptied into a store without room', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    plant.store.massKg.fill(plant.parts.store.brimKg / plant.store.massKg.length);
    const account = live(plant, emptying, 900);
    expect(account.overflowKg).toBeCloseTo(plant.parts.pan.fullKg + plant.parts.pipe.fullKg, 1);
  });

  it('runs off faster from a pan that falls to its drain than from a level one', () => {
    const leftAfter = (fallFraction: number) => {
      const plant = createPlant(withPan({ fallFraction }), { ...start, panFull: true });
      live(plant, emptying, 900);
      return fillFraction(plant);
    };
    expect(leftAfter(0.02)).toBe(0);
    expect(leftAfter(0)).toBeGreaterThan(0.1);
  });

  it('leaves supply and return pipes once nothing holds it', () => {
    const plant = createPlant(demo, { ...start, panFull: true });
    live(plant, pumping, 600);
    expect(rowKg(plant.supply)).toBeCloseTo(plant.parts.pipe.fullKg, 6);
    expect(rowKg(plant.return)).toBeGreaterThan(0.9 * plant.parts.pipe.fullKg);
    live(plant, emptying, 1500);
    expect(rowKg(plant.supply) + rowKg(plant.return)).toBe(0);
  });
});

describe('air under the sheet', () => {
  const kept = (fallFraction: number) => {
    const plant = createPlant(withPan({ fallFraction }), start);
    live(plant, pumping, 6000);
    return plant.airFraction;
  };
  it('is let out at the high side by a fall of a few centimetres, and kept by a level pan (common practice)', () => {
    expect(kept(0)).toBeCloseTo(0.12, 6);
    // 2 % of 3.5 m are 7 cm.
    expect(kept(0.02)).toBeLessThan(0.01);
    expect(kept(0.005)).toBeGreaterThan(kept(0.02));
  });
});

describe('heat in the demo loop', () => {
  it('comes home from a warm pan that is emptied', () => {
    const plant = createPlant(demo, { waterC: 20, panC: 45, panFull: true });
    const { homeJ } = live(plant, emptying, 900);
    expect(plant.store.waterC[0]).toBeGreaterThan(38);
    expect(plant.store.waterC.at(-1)).toBeLessThan(25);
    expect(homeJ / (plant.parts.pan.fullKg * 4184 * 45)).toBeGreaterThan(0.9);
  });

  it('is lost below the air temperature under a clear night sky', () => {
    const plant = createPlant(demo, { waterC: 20, panC: 8 });
    live(plant, emptying, 3600, { ...clearNight, airC: 4, longWaveWM2: 240 });
    expect(middle(plant).sheetC).toBeLessThan(0);
    expect(middle(plant).sheetC).toBeGreaterThan(-7);
  });

  it('passes to the water in proportion to how full the pan is', () => {
    const excessK = (share: number) => {
      const plant = createPlant(demo, { waterC: 20, panC: 20, panFull: true });
      for (const lane of [plant.pan.core, plant.pan.edge])
        for (const i of lane.massKg.keys()) lane.massKg[i] = (lane.massKg[i] ?? 0) * share;
      live(plant, resting, 300, withSun(900));
      return middle(plant).sheetC - middle(plant).waterC;
    };
    // The same heat through a quarter of the contact, less what the hotter sheet loses to the air.
    expect(excessK(0.25) / excessK(1)).toBeGreaterThan(2.3);
    expect(excessK(0.25) / excessK(1)).toBeLessThan(4);
  });

  it('makes a dry sheet far hotter than a wet one', () => {
    const dry = createPlant(demo, start);
    const wet = createPlant(demo, { ...start, panFull: true });
    live(dry, emptying, 1800, withSun(900));
    live(wet, resting, 1800, withSun(900));
    expect(middle(dry).sheetC - middle(wet).sheetC).toBeGreaterThan(15);
  });

  it('freezes a full pan slowly, and only after all its water has come to the freezing point', () => {
    const plant = createPlant(demo, { waterC: 20, panC: 4, panFull: true });
    const frost = { ...clearNight, airC: -6, longWaveWM2: 220 };
    live(plant, resting, 3600, frost);
    const early = plant.pan.core.iceKg.reduce((a, b) => a + b, 0);
    live(plant, resting, 8 * 3600, frost);
    const late = plant.pan.core.iceKg.reduce((a, b) => a + b, 0);
    expect(early).toBe(0);
    expect(late).toBeGreaterThan(20);
    expect(middle(plant).waterC).toBe(0);
    expect(panKg(plant)).toBeCloseTo(plant.parts.pan.fullKg, 6);
  });

  it('leaves the ice in the pan when it is emptied too late', () => {
    const plant = createPlant(demo, { waterC: 20, panC: 1, panFull: true });
    live(plant, resting, 8 * 3600, { ...clearNight, airC: -8, longWaveWM2: 210 });
    live(plant, emptying, 1500, { ...clearNight, airC: -8, longWaveWM2: 210 });
    expect(panKg(plant)).toBeGreaterThan(20);
    expect(fillFraction(plant)).toBeLessThan(0.03);
  });

  it('is carried off faster by rain', () => {
    const afterHour = (rainMmH: number) => {
      const plant = createPlant(demo, { waterC: 20, panC: 40, panFull: true });
      live(plant, resting, 3600, { ...clearNight, airC: 2, longWaveWM2: 300, rainMmH });
      return middle(plant).waterC;
    };
    expect(afterHour(8)).toBeLessThan(afterHour(0) - 0.2);
  });

  it('is kept in by snow, so that less of the pan freezes', () => {
    const iceKg = (snowKgM2: number) => {
      const plant = createPlant(demo, { waterC: 20, panC: 0.1, panFull: true });
      plant.snowKgM2 = snowKgM2;
      live(plant, resting, 4 * 3600, { ...clearNight, airC: -8, longWaveWM2: 220 });
      return plant.pan.core.iceKg.reduce((a, b) => a + b, 0);
    };
    expect(iceKg(30)).toBeLessThan(0.5 * iceKg(0));
  });

  it('melts snow, and books what that takes', () => {
    const plant = createPlant(demo, { waterC: 20, panC: 30, panFull: true });
    plant.snowKgM2 = 10;
    const { snowJ } = live(plant, resting, 3600, { ...dullNoon, airC: -1 });
    expect(plant.snowKgM2).toBeLessThan(9);
    expect((10 - plant.snowKgM2) * 333_500 * plant.parts.pan.sheetM2).toBeCloseTo(snowJ, -2);
  });
});

describe('how well the sheet gives its heat to the water', () => {
  /** Heat that stays in the loop over an hour of sun, all else being equal. */
  const gained = (options: object, pan: object = {}, weather = withSun(800)) => {
    const plant = createPlant(withPan(pan), { waterC: 30, panC: 30, panFull: true, ...options });
    const account = live(plant, pumping, 3600, weather);
    return account.gainJ - account.airJ - account.linerJ;
  };
  const usual = gained({});

  it('falls by a few percent when the sheet touches its water badly (common practice)', () => {
    const bad = gained({ traits: { contactFraction: 0.5 } });
    expect(bad / usual).toBeLessThan(0.98);
    expect(bad / usual).toBeGreaterThan(0.88);
  });

  it('falls by a few percent when an edge strip of the sheet is out of contact (common practice)', () => {
    // Two strips of the same 12.4 m2: all but 0.4 m2 on the water, and 1.2 m2 beyond it.
    const strip = gained({}, { wettedAreaM2: 11.2, waterDepthM: (0.04 * 12) / 11.2 });
    expect(strip / usual).toBeLessThan(0.995);
    expect(strip / usual).toBeGreaterThan(0.9);
  });

  it('falls when the wind rises (common practice)', () => {
    expect(gained({}, {}, { ...withSun(800), windMs: 6 })).toBeLessThan(0.85 * usual);
  });

  it('falls by some around noon when a wall stands on the sunny side (common practice)', () => {
    const noon = { ...withSun(800), sunZenithDeg: 35, sunAzimuthDeg: 180 };
    const walled = gained({}, { wallHeightM: 0.4 }, noon);
    const open = gained({}, { wallHeightM: 0.04 }, noon);
    expect(walled / open).toBeLessThan(0.97);
    expect(walled / open).toBeGreaterThan(0.8);
  });

  it('leaves the sheet hotter in the middle than at the edge when water circulates badly (common practice)', () => {
    const plant = createPlant(demo, { waterC: 30, panC: 30, panFull: true, traits: { flowEvenness: 0.1 } });
    live(plant, pumping, 3600, withSun(800));
    expect(middle(plant).sheetC - (plant.pan.edge.sheetC[4] ?? 0)).toBeGreaterThan(1);
  });
});
