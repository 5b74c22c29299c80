import { beforeAll, describe, expect, test } from 'vitest';
import { type DaySky, daySkyOf } from '../../../sim/identify/day-sky.ts';
import {
  moreSkyWM2,
  type OwnSky,
  type PossibleLoop,
  skyStepMin,
  usualLoop,
  usualSky,
} from '../../../sim/identify/possible-loop.ts';
import { type LoggedSpan, readSpan } from '../../../sim/identify/world/span.ts';
import { worldOf } from '../../../sim/identify/world/world.ts';
import { errorForLife } from '../../../sim/plant/sensors.ts';
import { createWeather } from '../../../sim/weather/weather.ts';
import { counterfactualCase } from '../../support/counterfactual-cases.ts';

/** A clear day. */
const seed = 7;
const one = counterfactualCase(seed, 'full', 2);
const day = one.logged.days.at(-1) as string;
const span = spanOf(day);
const channels = Object.keys(span.minutes.values) as (keyof typeof span.minutes.values)[];
const noon = 12 * 3_600_000 + Date.parse(`${day}T00:00:00Z`);

/** The loop as it is. */
const trueLoop: PossibleLoop = {
  traits: one.traits,
  sensorErrors: Object.fromEntries(channels.map((channel) => [channel, errorForLife(channel, seed)])),
  sky: usualSky,
};

function spanOf(name: string): LoggedSpan {
  const read = readSpan(one.logged.reader, name);
  if (!read.ok) throw new Error(read.why);
  return read.span;
}

const without = (...left: string[]): LoggedSpan => {
  const values = Object.entries(span.minutes.values).filter(([channel]) => !left.includes(channel));
  return { ...span, minutes: { ...span.minutes, values: Object.fromEntries(values) } };
};

/** Mean of what the world's long-wave light is off by, over the day [W/m2]. */
function offWM2(sky: OwnSky): number {
  const truth = createWeather({ location: one.site.location, seed });
  const { weather, fromMs, toMs } = worldOf(span, { ...trueLoop, sky });
  let sum = 0;
  let count = 0;
  for (let ms = fromMs + 60_000; ms <= toMs; ms += 600_000, count++)
    sum += Math.abs(weather.at(ms).longWaveWM2 - truth.at(ms).longWaveWM2);
  return sum / count;
}

describe('the sky over a logged day', () => {
  let told: DaySky;

  beforeAll(() => {
    told = daySkyOf(span, trueLoop) as DaySky;
  });

  test('comes nearer to the true one than the formula does', () => {
    expect(offWM2(told.of(trueLoop))).toBeLessThan(0.75 * offWM2(usualSky));
  });

  test('is darker over a loop that is taken for better than it is, and by about what it gains too much', () => {
    const better = { ...trueLoop, traits: { ...one.traits, opticalEfficiency: 0.9 } };
    const lessWM2 = moreSkyWM2(told.of(trueLoop), noon) - moreSkyWM2(told.of(better), noon);
    const noonWM2 = worldOf(span, trueLoop).weather.at(noon).irradianceWM2;
    const gainedWM2 = noonWM2 * (0.9 - (one.traits.opticalEfficiency as number));
    expect(lessWM2).toBeGreaterThan(0.4 * gainedWM2);
    expect(lessWM2).toBeLessThan(1.6 * gainedWM2);
  });

  test('of a loop next to it by straight lines is nearly what a search for that loop finds', () => {
    const stillLossWM2K = 0.97 * (one.traits.stillLossWM2K as number);
    const other = { ...trueLoop, traits: { ...one.traits, stillLossWM2K } };
    const own = daySkyOf(span, other) as DaySky;
    for (const hour of [3, 9, 12, 15, 21]) {
      const ms = noon + (hour - 12) * 3_600_000;
      expect(Math.abs(moreSkyWM2(told.of(other), ms) - moreSkyWM2(own.of(other), ms))).toBeLessThan(4);
    }
  });

  test('is shifted as it is asked for', () => {
    const plain = told.of(trueLoop);
    const shifted = told.of(
      trueLoop,
      told.covariance.map((_, index) => index),
    );
    expect(shifted.cloudShare).toBe(plain.cloudShare);
    for (const [index, value] of shifted.moreWM2.entries())
      expect(value - (plain.moreWM2[index] as number)).toBeCloseTo(index + 1, 9);
  });

  test('is known the better the longer the pan was looked at, and never worse than beforehand', () => {
    const sds = told.covariance.map((row, index) => Math.sqrt(row[index] as number));
    expect(sds[0]).toBeLessThanOrEqual(0.5);
    for (const sd of sds.slice(1)) expect(sd).toBeLessThanOrEqual(30);
    expect(Math.min(...sds.slice(1))).toBeLessThan(10);
  });
});

test.each([
  ['the sun is not measured', ['irradianceWM2']],
  ['the air is not measured', ['ambientC']],
  ['no thermometer of the pan is there', ['panSheetC', 'panOutletC', 'panInletC', 'panLevelMm', 'flowLMin']],
])('the pan tells no sky where %s', (_why, left) => {
  expect(daySkyOf(without(...left), usualLoop)).toBeUndefined();
});

test('the pan tells no sky where it is measured', () => {
  const longWaveWM2 = new Float64Array(span.minutes.count).fill(330);
  const values = { ...span.minutes.values, longWaveWM2 };
  expect(daySkyOf({ ...span, minutes: { ...span.minutes, values } }, usualLoop)).toBeUndefined();
});

describe('what more comes down', () => {
  const sky = { moreWM2: [10, 30, -10], fromMs: 1_000 };
  const stepMs = skyStepMin * 60_000;

  test.each([
    [-1, 10],
    [0, 10],
    [0.5, 20],
    [1, 30],
    [1.25, 20],
    [2, -10],
    [9, -10],
  ])('%f steps after the first instant lies on the line between two', (steps, moreWM2) => {
    expect(moreSkyWM2(sky, 1_000 + steps * stepMs)).toBeCloseTo(moreWM2, 9);
  });

  test('holds for ever where one value is all', () => {
    expect([-1e12, 0, 1e12].map((ms) => moreSkyWM2({ ...sky, moreWM2: [7] }, ms))).toEqual([7, 7, 7]);
  });
});
