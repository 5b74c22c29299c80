import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../../shared-types/channels.ts';
import { declarationOf, type Fault, type FaultName, faultNames } from '../../../../sim/plant/faults.ts';
import { numberOf } from '../../../../sim/plant/makes.ts';
import { followSensors, readSensors } from '../../../../sim/plant/sensors.ts';
import { createPlant, type PlantState } from '../../../../sim/plant/state.ts';
import { dullNoon, live, resting, withSun } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const demo = siteOf(demoContent());

function faultOf(name: FaultName, more: Partial<Fault> = {}): Fault {
  const channel: Channel = 'storeTopC';
  return { name, channel, size: declarationOf(name).size?.default ?? 0, forS: 0, ...more };
}

const bodyOf = ({ sensors }: PlantState, channel: Channel) => sensors.bodyValue[numberOf[channel]];

/** A loop at 30 °C in air of 18 °C, and its readings with one fault. */
function settled(fault: Fault, weather = dullNoon, seconds = 600) {
  const plant = createPlant(demo, { waterC: 30, panC: 30, panFull: true, draw: 'none' });
  live(plant, resting, 60);
  for (let s = 0; s < seconds; s += 5) followSensors(plant, weather, 5, [fault]);
  const read = () => readSensors(plant, 1, [fault], true);
  return { plant, read, top: () => read().storeTopC };
}
const many = (read: () => unknown, count = 400) => Array.from({ length: count }, read);
const scatter = (values: unknown[]) => {
  const numbers = values.map(Number);
  const mean = numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
  return Math.sqrt(numbers.reduce((sum, value) => sum + (value - mean) ** 2, 0) / numbers.length);
};

const rows: Record<string, () => void> = {
  'sensor-open': () => expect(settled(faultOf('sensor-open')).top()).toBe('open-circuit'),
  'sensor-short': () => expect(settled(faultOf('sensor-short')).top()).toBe('short-circuit'),
  'sensor-silent': () => {
    const values = settled(faultOf('sensor-silent')).read();
    expect(['storeTopC' in values, 'storeBottomC' in values]).toEqual([false, true]);
  },
  'topic-silent': () => expect('storeTopC' in settled(faultOf('topic-silent')).read()).toBe(false),
  'sensor-intermittent': () => {
    const missing = many(settled(faultOf('sensor-intermittent', { size: 0.3 })).top).filter(
      (value) => value === undefined,
    );
    expect(missing.length / 400).toBeCloseTo(0.3, 1);
  },
  'sensor-stuck': () => {
    const values = many(settled(faultOf('sensor-stuck')).read, 50) as {
      storeTopC: number;
      storeBottomC: number;
    }[];
    expect(new Set(values.map(({ storeTopC }) => storeTopC)).size).toBe(1);
    expect(new Set(values.map(({ storeBottomC }) => storeBottomC)).size).toBeGreaterThan(1);
  },
  'sensor-offset': () => expect(settled(faultOf('sensor-offset', { size: -7 })).top()).toBeCloseTo(23, 0),
  'sensor-drifting': () => {
    const after = (forS: number) => Number(settled(faultOf('sensor-drifting', { forS })).top());
    expect(after(2 * 86_400) - after(0)).toBeCloseTo(10, 5);
  },
  'sensor-noisy': () => {
    const spread = scatter(many(settled(faultOf('sensor-noisy')).top));
    expect(spread).toBeGreaterThan(2.5);
    expect(spread).toBeLessThan(3.5);
  },
  'sensor-spiking': () => {
    const spikes = many(settled(faultOf('sensor-spiking')).top).filter((value) => Number(value) > 60).length;
    expect(spikes).toBeGreaterThan(20);
    expect(spikes).toBeLessThan(65);
  },
  'sensor-slow': () => {
    const { plant } = settled(
      faultOf('sensor-slow', { channel: 'ambientC', size: 20 }),
      { ...dullNoon, airC: 28 },
      240,
    );
    // Twenty times 120 s: a tenth of the way after 240 s, less a little.
    expect(bodyOf(plant, 'ambientC')).toBeCloseTo(28 - 10 * Math.exp(-0.1), 6);
  },
  'sensor-loose': () => {
    const { plant } = settled(faultOf('sensor-loose', { size: 0.7 }), dullNoon, 3600);
    expect(bodyOf(plant, 'storeTopC')).toBeCloseTo(0.3 * 30 + 0.7 * 18, 0);
  },
  'sensor-sunlit': () => {
    const fault = faultOf('sensor-sunlit', { channel: 'ambientC' });
    expect(bodyOf(settled(fault, withSun(500), 3600).plant, 'ambientC')).toBeCloseTo(18 + 6, 6);
  },
};

describe('faults of sensors', () => {
  const names = faultNames.filter((name) => declarationOf(name).on === 'sensor');
  it.each(names)('%s', (name) => {
    const check = rows[name];
    if (check === undefined) throw new Error(`${name} has no row here`);
    check();
  });

  it('sensors-swapped shows each at the place of the other, and leaves the rest', () => {
    const fault: Fault = {
      name: 'sensors-swapped',
      channel: 'ambientC',
      other: 'storeBottomC',
      size: 0,
      forS: 0,
    };
    const { ambientC, storeBottomC, storeTopC } = settled(fault).read();
    expect([ambientC, storeBottomC, storeTopC].map((value) => Math.round(Number(value)))).toEqual([
      30, 18, 30,
    ]);
  });

  it.each(['device-silent', 'power-cut'] as const)('%s leaves out all', (name) => {
    expect(settled({ name, size: 0, forS: 0 }).read()).toEqual({});
  });

  it('of one sensor change no other', () => {
    const noise = faultOf('sensor-noisy');
    const [healthy, faulty] = [[], [noise]].map((faults) => {
      const plant = createPlant(demo, { waterC: 30, panC: 30, panFull: true });
      live(plant, resting, 60, dullNoon, faults);
      const { storeTopC: _, ...others } = readSensors(plant, 1, faults);
      return others;
    });
    expect(faulty).toEqual(healthy);
  });

  it('leave nothing behind in the readings once they are gone', () => {
    const { plant } = settled(faultOf('sensor-spiking', { size: 40 }));
    for (let i = 0; i < 50; i++) expect(Number(readSensors(plant, 1).storeTopC)).toBeLessThan(32);
  });
});
