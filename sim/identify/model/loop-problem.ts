import type { Channel } from '../../../shared-types/channels.ts';
import { remembered } from '../../plant/remembered.ts';
import type { Traits } from '../../plant/traits.ts';
import { at } from '../../plant/water.ts';
import type { LeastSquaresProblem } from '../least-squares/problem.ts';
import { skyStepMin } from '../possible-loop.ts';
import { type ComparedChannel, comparedOf, meanOver } from './compared.ts';
import { type Errors, predict, stepsS } from './predict.ts';
import type { Stretch } from './stretch.ts';
import { cloudKey, offsetKey, scaleKey, skyKey, type Unknown } from './unknowns.ts';

/** One channel of one day against the plant. */
export interface Misfit {
  readonly channel: Channel;
  readonly day: number;
  readonly blocks: readonly number[];
  /** What was measured less what the plant gives, in the channel's unit. */
  readonly apart: Float64Array;
}

export interface LoopModel {
  readonly unknowns: readonly Unknown[];
  misfits(parameters: readonly number[]): Misfit[];
  /** From now on misfits are put right by what finer steps of the plant make of this point. */
  refineAt(parameters: readonly number[]): void;
}

/** One day; keeps its newest answers, since a search often moves what touches another day alone. */
function dayModel(stretch: Stretch, number: number, unknowns: readonly Unknown[], known: Partial<Traits>) {
  const day: Day = { stretch, number, compared: comparedOf(stretch) };
  const own = unknowns.filter((unknown) => unknown.day === undefined || unknown.day === number);
  const places = own.map((unknown) => unknowns.indexOf(unknown));
  const misfitsBy = (longestS: number) => (parameters: readonly number[]) => {
    const value = new Map(own.map(({ key }, index) => [key, parameters[index] as number]));
    return misfitsOf(day, { ...known, ...traitsAt(own, parameters) }, errorsAt(value, day), longestS);
  };
  const coarse = remembered(misfitsBy(stepsS.coarse), unknowns.length + 1);
  const ownOf = (parameters: readonly number[]) => places.map((place) => parameters[place] as number);
  let put: readonly Float64Array[] | undefined;
  return {
    misfits: (parameters: readonly number[]) => corrected(coarse(ownOf(parameters)), put),
    refineAt(parameters: readonly number[]) {
      const fine = misfitsBy(stepsS.fine)(ownOf(parameters));
      put = coarse(ownOf(parameters)).map(({ apart }, index) =>
        apart.map((value, block) => (fine[index]?.apart[block] as number) - value),
      );
    },
  };
}

function corrected(misfits: Misfit[], put: readonly Float64Array[] | undefined): Misfit[] {
  if (put === undefined) return misfits;
  return misfits.map((misfit, index) => ({
    ...misfit,
    apart: misfit.apart.map((value, block) => value + (put[index]?.[block] as number)),
  }));
}

interface Day {
  readonly stretch: Stretch;
  readonly number: number;
  readonly compared: readonly ComparedChannel[];
}

/** The plant against some logged days. @param known - Traits that are not looked for; the usual ones when absent. */
export function loopModel(
  stretches: readonly Stretch[],
  unknowns: readonly Unknown[],
  known: Partial<Traits> = {},
): LoopModel {
  const days = stretches.map((stretch, number) => dayModel(stretch, number, unknowns, known));
  return {
    unknowns,
    misfits(parameters) {
      return days.flatMap((day) => day.misfits(parameters));
    },
    refineAt(parameters) {
      for (const day of days) day.refineAt(parameters);
    },
  };
}

function traitsAt(unknowns: readonly Unknown[], parameters: readonly number[]): Partial<Traits> {
  return Object.fromEntries(
    unknowns.flatMap(({ trait }, index) => (trait === undefined ? [] : [[trait, parameters[index]]])),
  );
}

function errorsAt(value: ReadonlyMap<string, number>, { stretch, number }: Day): Errors {
  const cloudShare = stretch.sunMeasured ? (value.get(cloudKey) ?? 0) : 0;
  return {
    offset: (channel) => value.get(offsetKey(channel)) ?? 0,
    scale: (channel) => value.get(scaleKey(channel)) ?? 0,
    skyWM2(minute) {
      const place = minute / skyStepMin;
      const node = Math.floor(place);
      const before = value.get(skyKey(number, node)) ?? 0;
      const steady = before + (place - node) * ((value.get(skyKey(number, node + 1)) ?? 0) - before);
      return steady + cloudShare * (stretch.passingCloudWM2[minute] as number);
    },
  };
}

function misfitsOf(
  { stretch, compared, number }: Day,
  traits: Partial<Traits>,
  errors: Errors,
  longestS: number,
): Misfit[] {
  const channels = compared.map(({ channel }) => channel);
  const predicted = predict(stretch, traits, errors, channels, longestS);
  return compared.map(({ channel, blocks, measured, minutes }) => {
    const column = predicted[channel] as Float64Array;
    const factor = 1 + errors.scale(channel);
    const offset = errors.offset(channel);
    const apart = Float64Array.from(
      measured,
      (value, index) => value - (factor * meanOver(column, minutes[index] as number[]) + offset),
    );
    return { channel, day: number, blocks, apart };
  });
}

/** Standard deviation of a block's misfit by channel, what it shares with its neighbours counted in. */
export type Spread = ReadonlyMap<Channel, number>;

/** How far each unknown is moved to see what it does, in standard deviations of what is known beforehand. */
const stepSd = 0.15;
/**
 * So many times wider than it is, what is known of the traits beforehand is taken in a search; the rest of it comes in
 * when the search has ended. A design choice.
 */
export const priorStretch = 3;

/** How exactly a search ends, and how far it looks aside. */
export interface SearchStyle {
  readonly tolerance: number;
  /** Times the usual step. */
  readonly stride: number;
}

/** Misfits and what is known beforehand as one sum of squares. What is only considered stays where it is. */
export function problemOf(
  model: LoopModel,
  spread: Spread,
  start: readonly number[],
  { tolerance, stride }: SearchStyle,
): LeastSquaresProblem {
  const { unknowns } = model;
  const sdOf = ({ trait, sd }: Unknown) => (trait === undefined ? sd : priorStretch * sd);
  return {
    start,
    steps: unknowns.map(({ sd }) => stride * stepSd * sd),
    least: unknowns.map(({ least }) => least),
    most: unknowns.map(({ most }) => most),
    fixed: unknowns.map(({ considered }) => considered === true),
    oneSided: true,
    tolerance,
    variance: 1,
    mostIterations: 25,
    residuals(parameters) {
      const known = unknowns.map((unknown, index) => (at(parameters, index) - unknown.mean) / sdOf(unknown));
      return Float64Array.of(...known, ...seenResiduals(model, spread, parameters));
    },
  };
}

/** Misfits over their spread, one after another. */
export function seenResiduals(model: LoopModel, spread: Spread, parameters: readonly number[]): number[] {
  return model
    .misfits(parameters)
    .flatMap(({ channel, apart }) => [...apart].map((value) => value / (spread.get(channel) as number)));
}
