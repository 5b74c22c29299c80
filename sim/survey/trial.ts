import type { Outputs } from '../../shared-types/engine.ts';
import type { Site } from '../../shared-types/site.ts';
import { advance } from '../plant/advance.ts';
import type { PlantSetup } from '../plant/parts.ts';
import { createPlant, type PlantState, panLiquidKg } from '../plant/state.ts';
import type { Conditions } from '../weather/conditions.ts';
import { blackBodyWM2 } from '../weather/sky.ts';

/** What the simulated loop did when it was filled, run and emptied once. */
export interface Trial {
  /** Until the pan is full; null when it never was. */
  readonly fillS: number | null;
  /** Lowest and highest flow of the pump while filling. */
  readonly leastFillLMin: number;
  readonly mostFillLMin: number;
  readonly loopLMin: number;
  /** Share of the return pipe that is water after half an hour. */
  readonly returnFullFraction: number;
  /** Until the full pan is empty; null when it never was, or never was full. */
  readonly drainS: number | null;
}

/** The longest that a setting allows for filling or emptying. */
const longestS = 14_400;
const stepS = 2;
const loopS = 1800;
const loopStepS = 10;
const roomC = 20;
const fullFraction = 0.995;

const filling: Outputs = { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false };
const emptying: Outputs = { pumpFraction: 0, drainOpen: true, drainPumpOn: true, exchangerPumpOn: false };

/** Neither sun nor cold: nothing but water moves. */
const indoors: Conditions = {
  atMs: 0,
  solarHour: 0,
  sunZenithDeg: 180,
  sunAzimuthDeg: 0,
  beamWM2: 0,
  diffuseWM2: 0,
  irradianceWM2: 0,
  airC: roomC,
  humidityFraction: 0.5,
  windMs: 0,
  longWaveWM2: blackBodyWM2(roomC),
  rainMmH: 0,
  snowMmH: 0,
};

/** Fills, runs and empties the simulated loop, with nobody drawing water. */
export function tryLoop(site: Site, setup: PlantSetup): Trial {
  const plant = createPlant(site, { ...setup, draw: 'none', waterC: roomC, panC: roomC });
  const fullKg = fullFraction * plant.parts.pan.fullKg;
  let leastFillLMin = Number.POSITIVE_INFINITY;
  let mostFillLMin = 0;
  const fillS = until(plant, filling, () => {
    leastFillLMin = Math.min(leastFillLMin, plant.moving.flowLMin);
    mostFillLMin = Math.max(mostFillLMin, plant.moving.flowLMin);
    return panLiquidKg(plant) >= fullKg;
  });
  for (let s = 0; s < loopS; s += loopStepS) advance(plant, filling, indoors, loopStepS);
  const loopLMin = plant.moving.flowLMin;
  const returnFullFraction = 1 - plant.returnAirFraction;
  const drainS = fillS === null ? null : until(plant, emptying, () => panLiquidKg(plant) === 0);
  return { fillS, leastFillLMin, mostFillLMin, loopLMin, returnFullFraction, drainS };
}

function until(plant: PlantState, outputs: Outputs, done: () => boolean): number | null {
  for (let s = stepS; s <= longestS; s += stepS) {
    advance(plant, outputs, indoors, stepS);
    if (done()) return s;
  }
  return null;
}
