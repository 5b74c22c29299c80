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

/** What the misfit of a block is taken for before anything is known of it [mm, K or L/min]. Design choices. */
const firstSpread = (channel: Channel) => (channel === 'panLevelMm' ? 0.5 : 0.3);
const rounds = 2;
/** Beyond this neighbouring blocks say the same; nearer to 1 nothing would be left of them. A design choice. */
const mostCorrelation = 0.95;
/** A search ends when it moves by less than the root of this, in standard errors; the first need not be so exact. */
const tolerances = { first: 1, others: 0.02 } as const;
/**
 * Where steps aside lead nowhere, since the plant has kinks, longer ones look over them, from the beginning; then from
 * where that got stuck short ones and usual ones.
 */
const tries = [
  { stride: 1, anew: true },
  { stride: 3, anew: true },
  { stride: 0.3, anew: false },
  { stride: 1, anew: false },
] as const;

/**
 * Fits, looks at what is left, weighs each channel by it, and fits again.
 *
 * The spread of a block is its root mean square misfit, over the noise of its sensor, times the root of
 * (1 + r) / (1 - r) with r the correlation of neighbours: so many blocks say as much as one that stands alone.
 */
export function search(model: LoopModel, goOn: GoOn): Fitted | NotFound {
  let point = model.unknowns.map(({ mean }) => mean);
  let spread = firstSpreadOf(model.misfits(point));
  for (let round = 0; ; round++) {
    const found = searchFrom(model, spread, point, { round, goOn });
    if (!found.converged) return found;
    model.refineAt(found.parameters);
    const misfits = model.misfits(found.parameters);
    if (round === rounds) return { found, misfits, spread };
    point = [...found.parameters];
    spread = spreadOf(misfits);
  }
}

function searchFrom(
  model: LoopModel,
  spread: Spread,
  point: readonly number[],
  { round, goOn }: { readonly round: number; readonly goOn: GoOn },
): Found | NotFound {
  let found: Found | NotFound | undefined;
  let stuckAt = point;
  for (const { stride, anew } of tries) {
    const tolerance = round === 0 ? tolerances.first : tolerances.others;
    found = leastSquares({
      ...problemOf(model, spread, anew ? point : stuckAt, { tolerance, stride }),
      goOn: (iteration, sum) => goOn(`round ${round + 1}, step ${iteration}: misfit ${sum.toFixed(1)}`),
    });
    if (found.converged || found.stuckAt === undefined) return found;
    ({ stuckAt } = found);
  }
  return found as NotFound;
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
