import { Dopri } from 'dopri';
import { describe, expect, it } from 'vitest';
import { emptyAccount } from '../../sim/plant/account.ts';
import { advance } from '../../sim/plant/advance.ts';
import type { LaneParts } from '../../sim/plant/parts.ts';
import { createPlant, type PlantState } from '../../sim/plant/state.ts';
import type { Conditions } from '../../sim/weather/conditions.ts';
import { dullNoon, pumping, resting } from '../support/plants.ts';
import { demoContent, siteOf } from '../support/sites.ts';

/**
 * One day of the demo loop beside a general solver of ordinary differential equations, the Dormand-Prince
 * pair of orders 5 and 4 of the package dopri.
 *
 * The equations are written down here once more, continuous in time, from the description of the plant:
 * sheet and water of each cell, plug flow through mixed cells, layers of the store, exchange between the
 * lanes. Water stands still but for the pump, so that hydraulics take no part.
 */
const site = siteOf(demoContent({ store: { volumeL: 900, headroomL: 520, heightM: 1.3, lossWK: 6 } }));
const cpJKgK = 4184;
const fromS = 8 * 3600;
/** Before the pan falls below the top of the store, whose order then would be another. */
const pumpOffS = 14.5 * 3600;
const untilS = 32 * 3600;
const traits = { drawnStoreFraction: 0, pipeLossWMK: 0.25 };

function weatherAt(s: number): Conditions {
  const hour = (s / 3600) % 24;
  const irradianceWM2 = 780 * Math.max(0, Math.sin(((hour - 6) / 12) * Math.PI));
  const sun = { sunZenithDeg: 20, beamWM2: 0, diffuseWM2: irradianceWM2, irradianceWM2 };
  const airC = 16 + 5 * Math.cos(((hour - 15) / 12) * Math.PI);
  return { ...dullNoon, ...sun, airC, windMs: 2, longWaveWM2: 340, solarHour: hour };
}

/** A full pan and full pipes, the return pipe pulling. */
function start(): PlantState {
  const plant = createPlant(site, { waterC: 25, panC: 32, panFull: true, traits });
  plant.returnAirFraction = 0;
  const eachKg = plant.parts.pipe.fullKg / plant.return.massKg.length;
  plant.return.massKg.fill(eachKg);
  return plant;
}

interface Outcome {
  readonly homeJ: number;
  readonly panC: number;
  readonly topC: number;
  readonly bottomC: number;
  readonly flowKgS: number;
}

function byPlant(stepS: number): Outcome {
  const plant = start();
  const account = emptyAccount();
  let flowKgS = 0;
  for (let s = fromS; s < untilS; s += stepS) {
    // The solver sees the weather within a step, the plant that of its middle.
    advance(plant, s < pumpOffS ? pumping : resting, weatherAt(s + stepS / 2), stepS, [], account);
    if (s === 12 * 3600) flowKgS = (plant.moving.flowLMin / 60) * 0.9982;
  }
  const { waterC } = plant.store;
  return {
    homeJ: account.homeJ,
    panC: plant.pan.core.waterC[4] ?? Number.NaN,
    topC: waterC[0] ?? Number.NaN,
    bottomC: waterC.at(-1) ?? Number.NaN,
    flowKgS,
  };
}

/** Where each part of the state stands in the solver's vector. */
const cells = 8;
const layers = 12;
const nodes = 4;
const coreWater = 0;
const coreSheet = cells;
const edgeWater = 2 * cells;
const edgeSheet = 3 * cells;
const supply = 4 * cells;
const back = supply + nodes;
const store = back + nodes;
const home = store + layers;
const size = home + 1;

function byOde(flowKgS: number): Outcome {
  const plant = start();
  const { parts } = plant;
  const pumpHeatW = 0.3 * 60;
  const rhs = (s: number, y: number[], dy: number[]): void => {
    dy.fill(0);
    const running = s < pumpOffS;
    const { airC, windMs, irradianceWM2, longWaveWM2 } = weatherAt(s);
    const own = parts.traits;
    const formWM2K = own.stillLossWM2K + own.windLossJM3K * windMs;
    const stretch = 1 / (1 - formWM2K / own.contactWM2K);
    const skyWM2 = own.emissivityRatio * (longWaveWM2 - 5.670374419e-8 * (airC + 273.15) ** 4);
    const gainWM2 =
      own.opticalEfficiency * (1 - own.windOpticalSM * windMs) * (irradianceWM2 + skyWM2) * stretch;
    const flow = running ? flowKgS : 0;
    const contact = own.contactWM2K * (1 - parts.pan.airKeptFraction);
    const rest = own.restContactFraction;
    const warm = contact * (rest + (1 - rest) * Math.sqrt(Math.min(1, flow / parts.pump.ratedKgS)));
    const at = (i: number) => y[i] ?? Number.NaN;
    const add = (i: number, rate: number) => {
      dy[i] = (dy[i] ?? 0) + rate;
    };
    const pipe = (first: number, inC: number) => {
      const nodeKg = parts.pipe.fullKg / nodes;
      for (let i = 0; i < nodes; i++) {
        const beforeC = i === 0 ? inC : at(first + i - 1);
        add(first + i, (flow * (beforeC - at(first + i))) / nodeKg);
        add(first + i, (-(parts.pipe.lossWK / nodes) * (at(first + i) - airC)) / (nodeKg * cpJKgK));
      }
    };
    const lane = (water: number, sheet: number, of: LaneParts, laneFlow: number) => {
      const { sheetJM2K } = own;
      for (let i = 0; i < cells; i++) {
        const waterC = at(water + i);
        const sheetC = at(sheet + i);
        const acrossW = (sheetC > waterC ? warm : contact) * of.wettedM2 * (sheetC - waterC);
        const upWM2K = (formWM2K - own.insulationWM2K) * stretch;
        const netW = gainWM2 * of.sheetM2 - upWM2K * of.sheetM2 * (sheetC - airC);
        add(sheet + i, (netW - acrossW) / (sheetJM2K * of.sheetM2));
        const inC = i === 0 ? at(supply + nodes - 1) : at(water + i - 1);
        const carriedW = laneFlow * cpJKgK * (inC - waterC);
        add(water + i, (acrossW + carriedW - of.linerWK * (waterC - airC)) / (of.cellKg * cpJKgK));
      }
    };
    const { core, edge, edgeFlowFraction } = parts.pan;
    lane(coreWater, coreSheet, core, flow * (1 - edgeFlowFraction));
    lane(edgeWater, edgeSheet, edge, flow * edgeFlowFraction);
    for (let i = 0; i < cells; i++) {
      const acrossKgS = own.laneMixingKgS * (at(edgeWater + i) - at(coreWater + i));
      add(coreWater + i, acrossKgS / core.cellKg);
      add(edgeWater + i, -acrossKgS / edge.cellKg);
    }
    const last = layers - 1;
    const lifted = flow > 0 ? at(store + last) + pumpHeatW / (flow * cpJKgK) : 0;
    pipe(supply, lifted);
    const outC =
      edgeFlowFraction * at(edgeWater + cells - 1) + (1 - edgeFlowFraction) * at(coreWater + cells - 1);
    if (running) pipe(back, outC);
    const layerKg = (parts.store.startKg - parts.pan.fullKg - parts.pipe.fullKg) / layers;
    const layerM = (parts.store.heightM * layerKg) / parts.store.brimKg;
    const conductWK = (own.storeConductionWMK * parts.store.areaM2) / layerM;
    for (let i = 0; i < layers; i++) {
      const aboveC = i === 0 ? at(back + nodes - 1) : at(store + i - 1);
      const layerJK = layerKg * cpJKgK;
      add(store + i, (flow * (aboveC - at(store + i))) / layerKg);
      if (i > 0) add(store + i, (conductWK * (at(store + i - 1) - at(store + i))) / layerJK);
      if (i < last) add(store + i, (conductWK * (at(store + i + 1) - at(store + i))) / layerJK);
      add(store + i, (-(parts.store.lossWK / layers) * (at(store + i) - airC)) / layerJK);
    }
    dy[home] = flow * cpJKgK * (at(back + nodes - 1) - at(store + last));
  };
  const y: number[] = Array.from({ length: size }, () => 25);
  y.fill(32, 0, 4 * cells);
  y[home] = 0;
  const solver = new Dopri(rhs, size, { atol: 1e-6, rtol: 1e-6, maxSteps: 200_000 });
  solver.initialise(fromS, y);
  const [off = []] = solver.run(pumpOffS)([pumpOffS]);
  // The return pipe runs empty into the top of the store once nothing pushes.
  const pipeKg = parts.pipe.fullKg;
  const pipeC = off.slice(back, back + nodes).reduce((sum, nodeC) => sum + nodeC / nodes, 0);
  const topKg = (parts.store.startKg - parts.pan.fullKg - pipeKg) / layers;
  off[home] = (off[home] ?? 0) + pipeKg * cpJKgK * pipeC;
  off[store] = (topKg * (off[store] ?? 0) + pipeKg * pipeC) / (topKg + pipeKg);
  solver.initialise(pumpOffS, off);
  const [end = []] = solver.run(untilS)([untilS]);
  const value = (i: number) => end[i] ?? Number.NaN;
  return {
    homeJ: value(home),
    panC: value(coreWater + 4),
    topC: value(store),
    bottomC: value(store + layers - 1),
    flowKgS,
  };
}

describe('a day of the loop beside a general solver', () => {
  const plant = byPlant(10);
  const ode = byOde(plant.flowKgS);

  it('brings home the same heat to half a percent', () => {
    expect(ode.homeJ).toBeGreaterThan(2e7);
    expect(Math.abs(plant.homeJ / ode.homeJ - 1)).toBeLessThan(0.005);
  });

  it('ends with the same temperatures to a tenth of a kelvin', () => {
    expect(Math.abs(plant.panC - ode.panC)).toBeLessThan(0.1);
    expect(Math.abs(plant.topC - ode.topC)).toBeLessThan(0.1);
    expect(Math.abs(plant.bottomC - ode.bottomC)).toBeLessThan(0.1);
  });

  it('comes closer to it as the step is halved', () => {
    const errorOf = (stepS: number) => Math.abs(byPlant(stepS).homeJ / ode.homeJ - 1);
    expect(errorOf(10)).toBeLessThan(errorOf(40));
  });
});
