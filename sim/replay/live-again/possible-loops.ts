import { channels } from '../../../shared-types/channels.ts';
import type { LoopFit } from '../../../shared-types/tuning.ts';
import { daySkyOf } from '../../identify/day-sky.ts';
import { loopOfFit } from '../../identify/loop-file.ts';
import { type OwnSky, type PossibleLoop, usualLoop } from '../../identify/possible-loop.ts';
import { passingShare } from '../../identify/world/passing-cloud.ts';
import type { LoggedSpan } from '../../identify/world/span.ts';
import { makes } from '../../plant/makes.ts';
import type { TraitName, Traits } from '../../plant/traits.ts';
import { hashFraction, hashNormal } from '../../weather/random.ts';

/** Streams of the seed that no weather and no sensor uses. */
const stream = { fitted: 301, assumed: 302, sensors: 303, sky: 304, daySky: 305, balance: 306 } as const;

/**
 * Where a loop that nobody fitted may lie: the collector's as the traits declare them, the others in the usual order of
 * size. Ranges from memory and design choices.
 */
const assumedRanges: Readonly<Partial<Record<TraitName, readonly [number, number]>>> = {
  opticalEfficiency: [0.85, 0.96],
  windOpticalSM: [0.01, 0.04],
  stillLossWM2K: [8, 15],
  windLossJM3K: [2, 5],
  contactWM2K: [150, 350],
  depthFactor: [0.85, 1.15],
  flowFactor: [0.8, 1.2],
  exchangerWM2K: [30, 90],
  insulationWM2K: [0.5, 1.5],
  pipeLossWMK: [0.15, 0.4],
};

/**
 * Loops that the one at hand may be: the best-known one first, then others drawn from what is uncertain of it. The same
 * seed draws the same ones.
 *
 * @param fit - Fit of the loop, converged; null: only what is usual is known.
 * @param samples - How many are drawn, 0 or more.
 */
export function possibleLoops(fit: LoopFit | null, samples: number, seed: number): readonly PossibleLoop[] {
  const drawn = Array.from({ length: samples }, (_, sample) => ({
    ...(fit === null
      ? assumedLoop(seed, sample)
      : loopOfFit(fit, shiftOf(fit.covariance, seed, stream.fitted, sample))),
    sky: drawnSky(seed, sample),
  }));
  return [fit === null ? usualLoop : loopOfFit(fit), ...drawn];
}

/**
 * What a sky by formula may be off by all through a day [W/m2], as a standard deviation; less than the fit takes it to be
 * off by for some hours. A design choice.
 */
const skySdWM2 = 20;
/**
 * The same of air that nobody measured, under a high sun, and of such a wind as a share. What a night tells of the air holds
 * the error of its sky as well, which the day does not share: hence so much. Design choices.
 */
const airSdK = 8;
const windSd = 0.5;

function drawnSky(seed: number, sample: number): OwnSky {
  const normal = (number: number) => hashNormal(seed, stream.sky, 4 * sample + number);
  return {
    cloudShare: passingShare.mean + passingShare.sd * normal(0),
    moreWM2: [skySdWM2 * normal(1)],
    fromMs: 0,
    airK: airSdK * normal(2),
    windShare: windSd * normal(3),
  };
}

/**
 * What the heat of a loop may be off by though its pan goes where it was seen: small print of model, sensors and draws as
 * a share of the sky for all the day [W/m2], as a standard deviation. A design choice that the counterfactual bears out.
 */
const balanceSdWM2 = 5;

/**
 * The same loops, each with the sky over a logged day that the pan tells if the loop is that one: the most likely for the
 * first, drawn ones for the others. Where the pan tells nothing they keep their own.
 */
export function underTheirSkies(
  span: LoggedSpan,
  loops: readonly PossibleLoop[],
  seed: number,
): readonly PossibleLoop[] {
  const [first = usualLoop] = loops;
  const sky = daySkyOf(span, first);
  if (sky === undefined) return loops;
  const drawn = (loop: PossibleLoop, sample: number): OwnSky => {
    const own = sky.of(loop, shiftOf(sky.covariance, seed, stream.daySky, sample));
    const balanceWM2 = balanceSdWM2 * hashNormal(seed, stream.balance, sample);
    return { ...own, moreWM2: own.moreWM2.map((value) => value + balanceWM2) };
  };
  return loops.map((loop, number) => ({ ...loop, sky: number === 0 ? sky.of(loop) : drawn(loop, number) }));
}

function assumedLoop(seed: number, sample: number): Omit<PossibleLoop, 'sky'> {
  return { traits: assumedTraits(seed, sample), sensorErrors: assumedErrors(seed, sample) };
}

/** Any error that a sensor of its make may have. */
function assumedErrors(seed: number, sample: number): PossibleLoop['sensorErrors'] {
  return Object.fromEntries(
    channels.map((channel, index) => {
      const { offset, scale } = makes[index] as (typeof makes)[number];
      const draw = 2 * hashFraction(seed, stream.sensors, sample * 100 + index) - 1;
      return [channel, { share: scale * draw, offset: offset * draw }];
    }),
  );
}

function assumedTraits(seed: number, sample: number): Partial<Traits> {
  return Object.fromEntries(
    Object.entries(assumedRanges).map(([name, [least, most]], index) => {
      const share = hashFraction(seed, stream.assumed, sample * 100 + index);
      return [name, least + (most - least) * share];
    }),
  );
}

/** Normal with that covariance: the lower Cholesky factor times independent draws. */
function shiftOf(
  covariance: readonly (readonly number[])[],
  seed: number,
  ownStream: number,
  sample: number,
): number[] {
  const draws = covariance.map((_, index) => hashNormal(seed, ownStream, sample * 100 + index));
  return choleskyOf(covariance).map((row) =>
    row.reduce((sum, entry, index) => sum + entry * (draws[index] as number), 0),
  );
}

/** Source: the textbook's algorithm of Cholesky. What rounding made negative counts as nought. */
export function choleskyOf(matrix: readonly (readonly number[])[]): number[][] {
  const lower: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const own: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? own : (lower[j] as number[]);
      let rest = row[j] as number;
      for (let k = 0; k < j; k++) rest -= (own[k] as number) * (other[k] as number);
      const diagonal = other[j] as number;
      own.push(j === i ? Math.sqrt(Math.max(0, rest)) : diagonal === 0 ? 0 : rest / diagonal);
    }
    lower.push(own);
  }
  return lower;
}
