import { describe, expect, it } from 'vitest';
import type { Outputs } from '../../../../shared-types/engine.ts';
import { declarationOf, type FaultName, faultNames } from '../../../../sim/plant/faults.ts';
import { fillFraction } from '../../../../sim/plant/pan.ts';
import { readSensors } from '../../../../sim/plant/sensors.ts';
import { createPlant, type PlantState } from '../../../../sim/plant/state.ts';
import { dullNoon, emptying, live, plumbedSite, pumping, resting } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const demo = siteOf(demoContent());

interface Row {
  readonly outputs: Outputs;
  readonly panFull: boolean;
  /** What is looked at after ten minutes, and what it is with and without the fault. */
  readonly look: (plant: PlantState) => number;
  readonly healthy: number;
  readonly faulty: number;
}
const level = (plant: PlantState) => Math.round(fillFraction(plant.pan, plant.parts) * 10) / 10;
const flow = (plant: PlantState) => Math.round(plant.moving.flowLMin);

const partFaults: Partial<Record<FaultName, Row>> = {
  'pump-dead': { outputs: pumping, panFull: false, look: flow, healthy: 24, faulty: 0 },
  'pump-stuck-on': { outputs: resting, panFull: true, look: flow, healthy: 0, faulty: 24 },
  'half-flow': { outputs: pumping, panFull: false, look: flow, healthy: 24, faulty: 12 },
  'drain-stuck-shut': { outputs: emptying, panFull: true, look: level, healthy: 0.1, faulty: 1 },
  'drain-stuck-open': { outputs: resting, panFull: true, look: level, healthy: 1, faulty: 0.1 },
};

describe('faults of parts', () => {
  const names = faultNames.filter((name) => declarationOf(name).on === 'part');
  it.each(names)('%s', (name) => {
    const row = partFaults[name];
    if (row === undefined) throw new Error(`${name} has no row here`);
    const size = declarationOf(name).size?.default ?? 0;
    const healthy = createPlant(demo, { waterC: 30, panC: 30, panFull: row.panFull });
    const faulty = createPlant(demo, { waterC: 30, panC: 30, panFull: row.panFull });
    live(healthy, row.outputs, 600);
    live(faulty, row.outputs, 600, dullNoon, [{ name, size }]);
    expect([row.look(healthy), row.look(faulty)]).toEqual([row.healthy, row.faulty]);
  });
});

it('drain-stuck-shut holds the water of a pan that empties through its resting pump too', () => {
  const plant = createPlant(plumbedSite('open-store', 'low', 'pump-stop'), {
    waterC: 30,
    panC: 30,
    panFull: true,
  });
  live(plant, emptying, 600, dullNoon, [{ name: 'drain-stuck-shut', size: 0 }]);
  expect(fillFraction(plant.pan, plant.parts)).toBe(1);
});

describe('faults of sensors', () => {
  const plant = createPlant(demo, { waterC: 30, panC: 30, panFull: true });
  live(plant, resting, 60);
  const read = (name: FaultName, size = declarationOf(name).size?.default ?? 0) =>
    readSensors(plant, 1, [{ name, channel: 'storeTopC', size }]);
  const scatter = (values: unknown[]) => {
    const numbers = values.map(Number);
    const mean = numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
    return Math.sqrt(numbers.reduce((sum, value) => sum + (value - mean) ** 2, 0) / numbers.length);
  };
  const many = (name: FaultName) => Array.from({ length: 300 }, () => read(name).storeTopC);

  it('sensor-open and sensor-short say so', () => {
    expect(read('sensor-open').storeTopC).toBe('open-circuit');
    expect(read('sensor-short').storeTopC).toBe('short-circuit');
  });
  it('sensor-silent leaves out one value, device-silent all', () => {
    expect('storeTopC' in read('sensor-silent')).toBe(false);
    expect('storeBottomC' in read('sensor-silent')).toBe(true);
    expect(readSensors(plant, 1, [{ name: 'device-silent', size: 0 }])).toEqual({});
  });
  it('sensor-stuck shows the same value while the others scatter', () => {
    const values = Array.from({ length: 50 }, () => read('sensor-stuck'));
    expect(new Set(values.map(({ storeTopC }) => storeTopC)).size).toBe(1);
    expect(new Set(values.map(({ storeBottomC }) => storeBottomC)).size).toBeGreaterThan(1);
  });
  it('sensor-offset is wrong by its size', () => {
    expect(Number(read('sensor-offset', -7).storeTopC)).toBeCloseTo(23, 0);
  });
  it('sensor-noisy scatters by its size', () => {
    expect(scatter(many('sensor-noisy'))).toBeGreaterThan(2.5);
    expect(scatter(many('sensor-noisy'))).toBeLessThan(3.5);
  });
  it('sensor-spiking is wrong about one time in ten', () => {
    const spikes = many('sensor-spiking').filter((value) => Number(value) > 60).length;
    expect(spikes).toBeGreaterThan(15);
    expect(spikes).toBeLessThan(50);
  });
});
