import { describe, expect, it } from 'vitest';
import type { Outputs } from '../../../../shared-types/engine.ts';
import { declarationOf, type Fault, faultNames } from '../../../../sim/plant/faults.ts';
import { fillFraction } from '../../../../sim/plant/pan.ts';
import { createPlant, type PlantState, plantKg } from '../../../../sim/plant/state.ts';
import { at } from '../../../../sim/plant/water.ts';
import { emptying, live, plumbedSite, pumping, resting, withSun } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const demo = siteOf(demoContent());
const dumping = siteOf(demoContent({ heatDump: { conductanceWK: 400 } }));
const drainBack = plumbedSite('reservoir', 'high-with-low-drain', 'drain-valve');
const weather = withSun(800);

interface Row {
  readonly outputs: Outputs;
  readonly panFull: boolean;
  readonly look: (plant: PlantState) => number;
  /** What is looked at after ten minutes, with the fault over without it. */
  readonly least: number;
  readonly most: number;
  readonly reservoir?: true;
  readonly heatDump?: true;
  /** How long the fault has been there [s]. */
  readonly forS?: number;
}
const level = fillFraction;
const flow = (plant: PlantState) => plant.moving.flowLMin;
const power = (plant: PlantState) => plant.moving.pumpPowerW;
const water = (plant: PlantState) => plantKg(plant);
const outletC = ({ pan }: PlantState) => at(pan.core.waterC, 7);
const sheetExcessK = ({ pan }: PlantState) => at(pan.core.sheetC, 4) - at(pan.core.waterC, 4);
const storeTopC = ({ store }: PlantState) => at(store.waterC, 0);
const reservoirKg = ({ reservoir }: PlantState) => at(reservoir?.massKg ?? [], 0);
const filling = { outputs: pumping, panFull: false };
const circulating = { outputs: pumping, panFull: true };
const restingFull = { outputs: resting, panFull: true };

const rows: Record<string, Row> = {
  'pump-dead': { ...circulating, look: power, least: 0, most: 0 },
  'pump-stuck-on': {
    ...restingFull,
    look: flow,
    least: Number.POSITIVE_INFINITY,
    most: Number.POSITIVE_INFINITY,
  },
  'pump-reversed': { ...circulating, look: flow, least: 0, most: 0.5 },
  'pump-unprimed': { ...circulating, look: flow, least: 0, most: 0 },
  // While filling: less flow makes no siphon, which would be a further loss.
  'half-flow': { ...filling, look: flow, least: 0.49, most: 0.53 },
  // 0.8 of the flow is left after each of two days.
  'filter-clogging': { ...filling, look: flow, forS: 2 * 86_400, least: 0.63, most: 0.67 },
  'store-valve-shut': { ...circulating, look: flow, least: 0, most: 0 },
  'air-pocket': { ...circulating, look: sheetExcessK, least: 1.4, most: 2 },
  'sheet-dirty': { ...restingFull, look: outletC, least: 0.9, most: 0.99 },
  'sheet-snowed': { ...restingFull, look: outletC, least: 0.5, most: 0.98, forS: 0 },
  'drain-stuck-shut': {
    outputs: emptying,
    panFull: true,
    look: level,
    least: 3,
    most: Number.POSITIVE_INFINITY,
  },
  'drain-stuck-open': { ...restingFull, look: level, least: 0, most: 0.5 },
  'drain-slow': { outputs: emptying, panFull: true, look: level, least: 1.5, most: Number.POSITIVE_INFINITY },
  // The healthy one cools what comes home.
  'dump-stuck-off': {
    outputs: { ...pumping, heatDumpOn: true },
    panFull: true,
    heatDump: true,
    look: storeTopC,
    least: 1.005,
    most: 1.2,
  },
  'pan-leak': { ...restingFull, look: water, least: 0.999, most: 0.9999 },
  'liner-burst': { ...restingFull, look: level, least: 0, most: 0.1 },
  'reservoir-short': { ...restingFull, reservoir: true, look: reservoirKg, least: 0, most: 0.05 },
};

describe('faults of parts', () => {
  const names = faultNames.filter((name) => declarationOf(name).on === 'part');
  it.each(names)('%s', (name) => {
    const row = rows[name];
    if (row === undefined) throw new Error(`${name} has no row here`);
    const site = row.reservoir ? drainBack : row.heatDump ? dumping : demo;
    const [healthy, faulty] = [0, 1].map(() =>
      createPlant(site, { waterC: 30, panC: 30, panFull: row.panFull, draw: 'none' }),
    ) as [PlantState, PlantState];
    const fault: Fault = { name, size: declarationOf(name).size?.default ?? 0, forS: row.forS ?? 3600 };
    live(healthy, row.outputs, 5, weather);
    live(faulty, row.outputs, 5, weather, [fault]);
    const later = { ...fault, forS: fault.forS + 5 };
    live(healthy, row.outputs, 595, weather);
    live(faulty, row.outputs, 595, weather, [later]);
    const ratio = row.look(faulty) / row.look(healthy);
    expect(ratio).toBeGreaterThanOrEqual(row.least);
    expect(ratio).toBeLessThanOrEqual(row.most);
  });

  it('a leak loses what it is said to', () => {
    const plant = createPlant(demo, { waterC: 30, panC: 30, panFull: true, draw: 'none' });
    const before = plantKg(plant);
    live(plant, resting, 3600, weather, [{ name: 'pan-leak', size: 5, forS: 0 }]);
    expect(before - plantKg(plant)).toBeCloseTo(5, 1);
  });

  it('drain-stuck-shut holds the water of a pan that empties through its resting pump too', () => {
    const site = plumbedSite('open-store', 'low', 'pump-stop');
    const plant = createPlant(site, { waterC: 30, panC: 30, panFull: true });
    live(plant, emptying, 600, weather, [{ name: 'drain-stuck-shut', size: 0, forS: 0 }]);
    expect(fillFraction(plant)).toBeGreaterThan(0.99);
  });
});
