import { describe, expect, it } from 'vitest';
import { channelMeaning, channels } from '../../../../shared-types/channels.ts';
import { advance } from '../../../../sim/plant/advance.ts';
import { readSensors, trueValue } from '../../../../sim/plant/sensors.ts';
import { createPlant } from '../../../../sim/plant/state.ts';
import { dullNoon, live, resting } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const unitOf = {
  C: 'C',
  WM2: 'W/m2',
  Ms: 'm/s',
  Fraction: 'fraction',
  LMin: 'L/min',
  Mm: 'mm',
  W: 'W',
} as const;
const everyChannel = Object.fromEntries(
  channels.map((channel) => [
    channel,
    { topic: 't', pointer: `/${channel}`, unit: unitOf[channelMeaning[channel].unit] },
  ]),
);
const site = siteOf(demoContent({ plumbing: 'reservoir', sensors: everyChannel }));

describe('sensors', () => {
  it('read every channel near its truth', () => {
    const plant = createPlant(site, { waterC: 30, panC: 25, panFull: true });
    live(plant, resting, 600);
    const values = readSensors(plant, 7);
    expect(Object.keys(values).sort()).toEqual([...channels].sort());
    for (const channel of channels) {
      const truth = trueValue(plant, dullNoon, channel);
      const allowed = Math.max(0.02 * Math.abs(truth), channelMeaning[channel].unit === 'C' ? 0.3 : 3);
      expect(Math.abs(Number(values[channel]) - truth), channel).toBeLessThan(allowed);
    }
  });

  it('show temperatures in sixteenths of a kelvin', () => {
    const plant = createPlant(site, { waterC: 30.03, panC: 25 });
    advance(plant, resting, dullNoon, 5);
    for (let i = 0; i < 20; i++) expect((Number(readSensors(plant, 7).storeTopC) * 16) % 1).toBe(0);
  });

  it('follow a change with their time constant', () => {
    const plant = createPlant(site, { waterC: 30, panC: 20 });
    advance(plant, resting, dullNoon, 5);
    const warm = { ...dullNoon, airC: dullNoon.airC + 10 };
    for (let s = 0; s < 120; s += 5) advance(plant, resting, warm, 5);
    // The air's thermometer has come 1 - 1/e of the way after its 120 s.
    expect(plant.sensors.ambientC?.bodyValue).toBeCloseTo(dullNoon.airC + 10 * (1 - Math.exp(-1)), 6);
  });

  it('repeat their noise for the same seed and change it for another', () => {
    const series = (seed: number) => {
      const plant = createPlant(site, { waterC: 30, panC: 20 });
      advance(plant, resting, dullNoon, 5);
      return Array.from({ length: 30 }, () => readSensors(plant, seed).storeTopC);
    };
    expect(series(1)).toEqual(series(1));
    expect(series(1)).not.toEqual(series(2));
  });
});
