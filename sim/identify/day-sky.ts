import { Matrix } from 'ml-matrix';
import type { Traits } from '../plant/traits.ts';
import { loopModel, type Misfit } from './model/loop-problem.ts';
import { type Stretch, stretchOf } from './model/stretch.ts';
import { skyUnknowns } from './model/unknowns.ts';
import type { OwnSky, PossibleLoop } from './possible-loop.ts';
import { search } from './search.ts';
import { panChannel } from './world/pan-channel.ts';
import { putRight } from './world/put-right.ts';
import type { LoggedSpan } from './world/span.ts';

/** What the pan tells of the sky over a logged day. */
export interface DaySky {
  /** The most likely sky if the loop is that one. @param shift - What is added to it, in the order of the covariance. */
  of(loop: PossibleLoop, shift?: readonly number[]): OwnSky;
  /** What is left unknown of it: the share of passing clouds first, then what more comes down, node by node [W/m2]. */
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Looks for the sky with which the pan goes as it was seen to go: the dry sheet tells it, and the water that flows.
 *
 * A loop that is taken for a little better than it is gets a little darker sky with it, so that the logged day comes out
 * the same. Another loop's sky is found by straight lines from the first one's: the pan answers to the sky by them.
 *
 * @returns undefined where sun or air are not measured, since they are then what the pan tells, where the sky is
 * measured itself, without a thermometer of the pan, and where the search does not end.
 */
export function daySkyOf(span: LoggedSpan, first: PossibleLoop): DaySky | undefined {
  if (panChannel(span) === undefined) return undefined;
  const stretch = stretchOf(putRight(span, first));
  const { sunMeasured, origins } = stretch;
  if (!sunMeasured || origins.air !== 'measured' || origins.sky === 'measured') return undefined;
  const unknowns = skyUnknowns([stretch.span.minutes.count]);
  const fitted = search(loopModel([stretch], unknowns, first.traits), () => true);
  if (!('found' in fitted)) return undefined;
  const { found, misfits, spread } = fitted;
  const { parameters, unitCovariance, jacobian } = found;
  const coarseOf = (own: Stretch, traits: Partial<Traits>) =>
    loopModel([own], unknowns, traits).misfits(parameters);
  const coarse = coarseOf(stretch, first.traits);
  const known = unknowns.map(({ mean, sd }, index) => ((parameters[index] as number) - mean) / sd);
  const towards = new Matrix(unitCovariance.map((row) => [...row])).mmul(jacobian.transpose());
  return {
    covariance: unitCovariance,
    of(loop, shift = []) {
      const own = coarseOf(stretchOf(putRight(span, loop)), loop.traits);
      const seen = misfits.flatMap((misfit, index) =>
        [...apartOf(misfit, own[index] as Misfit, coarse[index] as Misfit)].map(
          (value) => value / (spread.get(misfit.channel) as number),
        ),
      );
      const moved = towards.mmul(Matrix.columnVector([...known, ...seen]));
      const [cloudShare = 0, ...moreWM2] = parameters.map(
        (value, index) => value - moved.get(index, 0) + (shift[index] ?? 0),
      );
      return { ...loop.sky, cloudShare, moreWM2, fromMs: stretch.span.minutes.fromMs };
    },
  };
}

/** What a finer plant left of the first loop's misfit, and by what another loop's differs. */
function apartOf({ apart }: Misfit, { apart: own }: Misfit, { apart: first }: Misfit): Float64Array {
  return apart.map((value, block) => value + (own[block] as number) - (first[block] as number));
}
