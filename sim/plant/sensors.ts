import { type Channel, channels } from '../../shared-types/channels.ts';
import type { Conditions } from '../weather/conditions.ts';
import { hashFraction } from '../weather/random.ts';
import type { Fault } from './faults.ts';
import { makes, numberOf } from './makes.ts';
import { faultyTruth, faultyValue, nothingIsSent, slownessOf, wiredTo } from './sensor-faults.ts';
import type { PlantState } from './state.ts';
import { trueValues } from './truth.ts';
import { at, column, columnOf } from './water.ts';

/** What a sensor gives: a number in the channel's unit, or why there is none. */
export type SensorValue = number | 'open-circuit' | 'short-circuit';
export type SensorValues = Partial<Record<Channel, SensorValue>>;

const noFaults: readonly Fault[] = [];
const count = channels.length;

/** The makes as columns of numbers, since they are asked in every step. */
const lagS = columnOf(makes.map((make) => make.lagS));
const airFraction = columnOf(makes.map((make) => make.airFraction));
const noise = columnOf(makes.map((make) => make.noise));
const offset = columnOf(makes.map((make) => make.offset));
const scale = columnOf(makes.map((make) => make.scale));
const stepsPerUnit = columnOf(makes.map((make) => make.stepsPerUnit));
const least = columnOf(makes.map((make) => make.least));

/** Share of its way that each sensor goes in a step, for the length that was asked for last. */
const followed = { dtS: Number.NaN, fractions: column(count, 0) };

function followedFractions(dtS: number): readonly number[] {
  const { fractions } = followed;
  if (followed.dtS === dtS) return fractions;
  followed.dtS = dtS;
  for (let i = 0; i < count; i++) fractions[i] = followedFraction(at(lagS, i), dtS);
  return fractions;
}

const followedFraction = (ownLagS: number, dtS: number) => -Math.expm1(-dtS / ownLagS);

/** Lets the body of every sensor follow the truth over one step. In the first step each starts at the truth. */
export function followSensors(
  state: PlantState,
  weather: Conditions,
  dtS: number,
  faults: readonly Fault[] = noFaults,
): void {
  const truths = trueValues(state, weather);
  const fractions = followedFractions(dtS);
  const { bodyValue, shownValue } = state.sensors;
  const { airC } = weather;
  const first = bodyValue.length === 0;
  for (let i = 0; i < count; i++) {
    const truth = at(truths, i);
    let felt = truth + at(airFraction, i) * (airC - truth);
    let fraction = at(fractions, i);
    if (faults.length > 0) {
      const channel = channels[i] as Channel;
      felt = faultyTruth(felt, channel, faults, weather);
      const slowness = slownessOf(channel, faults);
      if (slowness !== 1) fraction = followedFraction(slowness * at(lagS, i), dtS);
    }
    if (first) {
      bodyValue.push(felt);
      shownValue.push(felt);
    } else {
      const body = at(bodyValue, i);
      bodyValue[i] = body + (felt - body) * fraction;
    }
  }
}

/**
 * Reads every sensor once: with the error that it has for life, with noise, in its steps, and with its
 * faults. What is not sent is left out.
 *
 * A sensor's error and noise depend on the seed, on its channel, and on how many readings were taken before.
 *
 * @param exact - Without the error for life, so that two sensors of one place agree but for their noise.
 */
export function readSensors(
  state: PlantState,
  seed: number,
  faults: readonly Fault[] = noFaults,
  exact = false,
): SensorValues {
  const reading = state.readingCount++;
  const { bodyValue, shownValue } = state.sensors;
  if (bodyValue.length === 0) return {};
  const faulty = faults.length > 0;
  if (faulty && nothingIsSent(faults)) return {};
  const own = ownSensorsOf(state.parts.channels);
  const lifeDraws = lifeDrawsOf(seed);
  const values: SensorValues = faulty ? {} : { ...own.template };
  for (let i = 0; i < own.numbers.length; i++) {
    const number = at(own.numbers, i);
    const channel = channels[number] as Channel;
    const body = at(bodyValue, faulty ? numberOf[wiredTo(channel, faults)] : number);
    const off = exact ? 0 : (at(offset, number) + at(scale, number) * body) * at(lifeDraws, number);
    const healthy = inSteps(body + off + at(noise, number) * noiseOf(seed, number, reading), number);
    if (!faulty) {
      values[channel] = shownValue[number] = healthy;
      continue;
    }
    const value = faultyValue(healthy, at(shownValue, number), channel, faults, { seed, reading });
    if (typeof value === 'number') values[channel] = shownValue[number] = inSteps(value, number);
    else if (value !== undefined) values[channel] = value;
  }
  return values;
}

/** The sensors of the loop that was asked for last: their numbers, and an object with their keys in order. */
const own: { channels: readonly Channel[]; numbers: readonly number[]; template: SensorValues } = {
  channels: [],
  numbers: [],
  template: {},
};

function ownSensorsOf(ownChannels: readonly Channel[]) {
  if (own.channels !== ownChannels) {
    own.channels = ownChannels;
    own.numbers = ownChannels.map((channel) => numberOf[channel]);
    own.template = Object.fromEntries(ownChannels.map((channel) => [channel, 0.5]));
  }
  return own;
}

/** Streams of a seed: those of the weather are smaller numbers. */
const noiseStream = 100;
const lifeStream = 200;

/** Where in the range of its make each sensor's error for life lies, -1 to 1, for the seed that was asked for last. */
const life = { seed: Number.NaN, draws: column(count, 0) };

function lifeDrawsOf(seed: number): readonly number[] {
  if (life.seed !== seed) {
    life.seed = seed;
    for (let i = 0; i < count; i++) life.draws[i] = 2 * hashFraction(seed, lifeStream, i) - 1;
  }
  return life.draws;
}

/** What a channel's sensor shows wrong for life: (1 + share) times the truth, and an offset more, in the channel's unit. */
export function errorForLife(
  channel: Channel,
  seed: number,
): { readonly share: number; readonly offset: number } {
  const number = numberOf[channel];
  const draw = at(lifeDrawsOf(seed), number);
  return { share: at(scale, number) * draw, offset: at(offset, number) * draw };
}

/** Nearly normal with mean 0 and standard deviation 1: the sum of three even draws, out of one. */
function noiseOf(seed: number, number: number, reading: number): number {
  const bits = (hashFraction(seed, noiseStream + number, reading) * 0x4000_0000) | 0;
  return ((bits & 1023) + ((bits >> 10) & 1023) + (bits >> 20)) / 511.5 - 3;
}

/**
 * A value on the sensor's scale. Adding nought turns the negative nought, which JSON does not keep, into the
 * plain one.
 */
function inSteps(value: number, number: number): number {
  const perUnit = at(stepsPerUnit, number);
  return Math.max(at(least, number), Math.round(value * perUnit) / perUnit) + 0;
}
