import { describe, expect, it } from 'vitest';
import { type Channel, channelMeaning, channels } from '../../../../shared-types/channels.ts';
import { makes, numberOf } from '../../../../sim/plant/makes.ts';
import { followSensors, readSensors } from '../../../../sim/plant/sensors.ts';
import { createPlant, type PlantState } from '../../../../sim/plant/state.ts';
import { trueValues } from '../../../../sim/plant/truth.ts';
import { dullNoon, emptying, live, pumping, resting, withSun } from '../../../support/plants.ts';
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
const newPlant = () => createPlant(site, { waterC: 30, panC: 25, panFull: true });
const bodyOf = ({ sensors }: PlantState, channel: Channel) => sensors.bodyValue[numberOf[channel]];
const trueValue = (plant: PlantState, channel: Channel) =>
  trueValues(plant, dullNoon)[numberOf[channel]] ?? Number.NaN;
const makeOf = (channel: Channel) => {
  const make = makes[numberOf[channel]];
  if (make === undefined) throw new Error(`${channel} has no make`);
  return make;
};
const exactly = (plant: ReturnType<typeof newPlant>, seed: number) => readSensors(plant, seed, [], true);

describe('sensors', () => {
  it('read every channel within what their make allows', () => {
    const plant = newPlant();
    live(plant, pumping, 600);
    const values = readSensors(plant, 7);
    expect(Object.keys(values).sort()).toEqual([...channels].sort());
    for (const channel of channels) {
      const { offset, scale, noise, stepsPerUnit, airFraction } = makeOf(channel);
      const truth = trueValue(plant, channel);
      const airK = airFraction * Math.abs(truth - dullNoon.airC);
      const off = offset + scale * Math.abs(truth) + 3 * noise + 0.5 / stepsPerUnit + airK;
      // A tenth more, since a lagging body is a little behind.
      expect(Math.abs(Number(values[channel]) - truth), channel).toBeLessThan(1.1 * off);
    }
  });

  it('show temperatures in sixteenths of a kelvin, and the rest in steps that make short numbers', () => {
    const plant = newPlant();
    live(plant, pumping, 60);
    for (let i = 0; i < 20; i++) {
      const values = readSensors(plant, 7);
      expect((Number(values.storeTopC) * 16) % 1).toBe(0);
      expect(String(values.flowLMin)).toMatch(/^\d+(\.\d)?$/);
      expect(String(values.humidityFraction)).toMatch(/^\d(\.\d{1,3})?$/);
    }
  });

  it('follow a change with their time constant', () => {
    const plant = newPlant();
    followSensors(plant, dullNoon, 5);
    const warm = { ...dullNoon, airC: dullNoon.airC + 10 };
    for (let s = 0; s < 120; s += 5) followSensors(plant, warm, 5);
    // The air's thermometer has come 1 - 1/e of the way after its 120 s.
    expect(bodyOf(plant, 'ambientC')).toBeCloseTo(dullNoon.airC + 10 * (1 - Math.exp(-1)), 6);
    // So it has in steps of any length and of mixed lengths.
    for (const dtS of [7, 53, 60]) followSensors(plant, dullNoon, dtS);
    const left = 10 * (1 - Math.exp(-1)) * Math.exp(-1);
    expect(bodyOf(plant, 'ambientC')).toBeCloseTo(dullNoon.airC + left, 6);
  });

  it('repeat their noise for the same seed and change it for another', () => {
    const series = (seed: number) => {
      const plant = newPlant();
      followSensors(plant, dullNoon, 5);
      return Array.from({ length: 30 }, () => exactly(plant, seed).storeTopC);
    };
    expect(series(1)).toEqual(series(1));
    expect(series(1)).not.toEqual(series(2));
  });

  it('scatter by their noise around the truth', () => {
    const plant = newPlant();
    followSensors(plant, withSun(500), 5);
    const values = Array.from({ length: 4000 }, () => Number(exactly(plant, 3).irradianceWM2) - 500);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    expect(Math.abs(mean)).toBeLessThan(0.1);
    // 1.5 W/m2 of noise, and a twelfth for the rounding to whole ones.
    expect(Math.sqrt(variance)).toBeCloseTo(Math.sqrt(1.5 ** 2 + 1 / 12), 1);
  });

  it('have the same noise whatever other sensors there are', () => {
    const { storeTopC, storeBottomC, panOutletC } = everyChannel;
    const few = siteOf(
      demoContent({ plumbing: 'reservoir', sensors: { panOutletC, storeTopC, storeBottomC } }),
    );
    const plant = createPlant(few, { waterC: 30, panC: 25, panFull: true });
    const all = newPlant();
    followSensors(plant, dullNoon, 5);
    followSensors(all, dullNoon, 5);
    for (let i = 0; i < 100; i++) {
      const values = readSensors(plant, 5);
      expect(Object.keys(values).sort()).toEqual(['panOutletC', 'storeBottomC', 'storeTopC']);
      expect(readSensors(all, 5)).toMatchObject(values);
    }
  });

  it('have noise of their own', () => {
    const plant = newPlant();
    followSensors(plant, dullNoon, 5);
    const alike = Array.from({ length: 200 }, () => exactly(plant, 5)).filter(
      ({ storeTopC, storeBottomC }) => storeTopC === storeBottomC,
    );
    expect(alike.length).toBeLessThan(150);
  });

  it('disagree for life by up to a kelvin, each seed in its own way, unless they shall be exact', () => {
    const differences: number[] = [];
    for (let seed = 0; seed < 200; seed++) {
      const plant = newPlant();
      followSensors(plant, dullNoon, 5);
      const mean = (exact: boolean) => {
        let sum = 0;
        for (let i = 0; i < 50; i++) {
          const values = readSensors(plant, seed, [], exact);
          sum += (Number(values.storeTopC) - Number(values.storeMiddleC)) / 50;
        }
        return sum;
      };
      expect(Math.abs(mean(true))).toBeLessThan(0.05);
      differences.push(Math.abs(mean(false)));
    }
    expect(Math.max(...differences)).toBeGreaterThan(0.8);
    expect(Math.max(...differences)).toBeLessThan(1.05);
    expect(differences.filter((difference) => difference < 0.3).length).toBeGreaterThan(50);
  });

  it('show a share of the air where they are strapped on outside', () => {
    const plant = newPlant();
    followSensors(plant, { ...dullNoon, airC: -20 }, 5);
    expect(bodyOf(plant, 'panOutletC')).toBeCloseTo(25 - 0.02 * 45, 9);
    expect(bodyOf(plant, 'ambientC')).toBe(-20);
  });
});

describe('what sensors are held to', () => {
  it('is the mixed water of both lanes at the outlet while there is any, and no water when it is dry', () => {
    const plant = newPlant();
    const { core, edge } = plant.pan;
    core.waterC[7] = 50;
    edge.waterC[7] = 30;
    // A quarter of the pan lies along the walls.
    expect(trueValue(plant, 'panOutletC')).toBeCloseTo(0.75 * 50 + 0.25 * 30, 9);
    core.massKg.fill(0);
    edge.massKg.fill(0);
    core.sheetC.fill(60);
    expect(trueValue(plant, 'panOutletC')).toBeCloseTo((60 + dullNoon.airC) / 2, 9);
  });

  it('is the supply pipe at the inlet, and the pan behind it when that stands empty', () => {
    const plant = newPlant();
    plant.pan.core.waterC[0] = 44;
    plant.pan.edge.waterC[0] = 44;
    plant.supply.waterC[3] = 21;
    expect(trueValue(plant, 'panInletC')).toBe(21);
    plant.supply.massKg.fill(0);
    expect(trueValue(plant, 'panInletC')).toBeCloseTo(44, 9);
  });

  it('is the depth of all that stands in the pan, ice as well', () => {
    const plant = newPlant();
    expect(trueValue(plant, 'panLevelMm')).toBeCloseTo(40, 6);
    plant.pan.core.iceKg[3] = plant.pan.core.massKg[3] ?? 0;
    plant.pan.core.massKg[3] = 0;
    expect(trueValue(plant, 'panLevelMm')).toBeCloseTo(40, 6);
    live(plant, emptying, 7200);
    expect(trueValue(plant, 'panLevelMm')).toBeLessThan(6);
  });

  it('is the forward flow alone', () => {
    const plant = newPlant();
    live(plant, emptying, 30);
    expect(trueValue(plant, 'flowLMin')).toBe(0);
    live(plant, resting, 30);
    expect(trueValue(plant, 'flowLMin')).toBe(0);
    live(plant, pumping, 30);
    expect(trueValue(plant, 'flowLMin')).toBeGreaterThan(5);
  });
});
