import type { Channel } from '../../shared-types/channels.ts';
import { makes, numberOf } from '../plant/makes.ts';
import { leastSquares } from './least-squares/least-squares.ts';
import type { Found, NotFound } from './least-squares/problem.ts';
import { type LoopModel, type Misfit, problemOf, type Spread } from './model/loop-problem.ts';
import { residualTest } from './residual-tests.ts';

/** A model brought to the data, with the spread of its misfits in that of its parameters. */
export interface Fitted {
  readonly found: Found;
  readonly misfits: readonly Misfit[];
  readonly spread: Spread;
}

/** Told now and then how far a fit is. @returns false to give up. */
export type GoOn = (text: string) => boolean;

/** What the misfit of a block is taken for before anything is known of it, by unit. Design choices. */
const firstSpread = (channel: Channel) =>
  channel.endsWith('C') ? 0.3 : channel === 'panLevelMm' ? 0.5 : 0.3;
const rounds = 2;
/** A search ends when it moves by less than the root of this, in standard errors; the first by less exactly so. */
const tolerances = { first: 1, others: 0.02 } as const;
/** Beyond this neighbouring blocks say the same; nearer to 1 nothing would be left of them. A design choice. */
const mostCorrelation = 0.95;

/**
 * Fits, looks at what is left, weighs each channel by it, and fits again.
 *
 * The spread of a block is its root mean square misfit, over the noise of its sensor, times the root of
 * (1 + r) / (1 - r) with r the correlation of neighbours: so many blocks say as much as one that stands alone.
 */
export function search(model: LoopModel, goOn: GoOn): Fitted | NotFound {
  let point = model.unknowns.map(({ mean }) => mean);
  let spread = firstSpreadOf(model.misfits(point));
  for (let round = 1; ; round++) {
    const tolerance = round === 1 ? tolerances.first : tolerances.others;
    const found = leastSquares({
      ...problemOf(model, spread, point, tolerance),
      goOn: (iteration, sum) => goOn(`round ${round}, step ${iteration}: misfit ${sum.toFixed(1)}`),
    });
    if (!found.converged) return found;
    model.refineAt(found.parameters);
    const misfits = model.misfits(found.parameters);
    if (round > rounds) return { found, misfits, spread };
    point = [...found.parameters];
    spread = spreadOf(misfits);
  }
}

function firstSpreadOf(misfits: readonly Misfit[]): Spread {
  return new Map(misfits.map(({ channel }) => [channel, firstSpread(channel)]));
}

function spreadOf(misfits: readonly Misfit[]): Spread {
  return new Map(
    [...Map.groupBy(misfits, ({ channel }) => channel)].map(([channel, own]) => {
      const { rms, lagOneCorrelation } = residualTest(own);
      const shared = Math.min(mostCorrelation, Math.max(0, lagOneCorrelation));
      const noise = (makes[numberOf[channel]] as (typeof makes)[number]).noise;
      return [channel, Math.max(rms, noise) * Math.sqrt((1 + shared) / (1 - shared))];
    }),
  );
}
