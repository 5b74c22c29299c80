import { outsideJ } from '../harvest.ts';
import type { Run } from '../runs.ts';
import { climb } from './climb.ts';
import { type Mode, modesOf } from './modes.ts';
import { divided, playPlan } from './schedule.ts';
import { searchBest } from './search.ts';
import { skyOf } from './sky.ts';

/**
 * Between these two lies, as far as the margins of the upper one reach, what perfect foresight can harvest from a run
 * with the same parts.
 */
export interface Best {
  /**
   * The search's own bound, and margins for its coarse grid and steps that were measured on one schedule and doubled [J].
   * An estimate of what no policy exceeds, with room in it; not a proof.
   */
  readonly boundJ: number;
  /** What the best schedule found brings in the true plant [J]. */
  readonly achievedJ: number;
  /** That schedule, a mode a minute. */
  readonly plan: readonly Mode[];
  /** The bound of the search alone, and what was added to it for its coarse grid and its coarse steps [J]. */
  readonly searchJ: number;
  readonly gridJ: number;
  readonly stepsJ: number;
  readonly labels: number;
}

/** Step of the search and of the policies [s]. */
const coarseS = 60;
const fineS = 10;
/** Minutes from decision to decision. Where nothing rests, water is let in and out more often. */
const decisionMin = { withRest: 8, withoutRest: 5 } as const;
const rounds = 3;
/** What was measured on the best schedule may be somewhat more on another. */
const marginFactor = 2;

export interface BestOptions {
  /** See `SearchTask`; smaller grants and more labels make the bound tighter and the search longer. */
  readonly grantFraction?: number;
  readonly mostLabels?: number;
}

/**
 * The best that a run allows, from above and from below.
 *
 * The search decides on a grid of some minutes and steps its plant by the minute. What that costs is measured on the
 * schedule it finds, and added to its bound twice over: what the schedule gains when its switches may
 * move by the minute, and what it brings more in the plant of 10 s.
 */
export function bestOf(run: Run, { grantFraction = 1.5e-4, mostLabels = 400 }: BestOptions = {}): Best {
  const plant = run.plant();
  const modes = modesOf(run.site);
  const sky = skyOf(run.weather, run.fromMs, run.toMs, coarseS);
  const stepsADecision = modes.includes('rest') ? decisionMin.withRest : decisionMin.withoutRest;
  const coarse = { plant, sky, stepS: coarseS };
  const found = searchBest({ ...coarse, modes, stepsADecision, grantFraction, mostLabels });
  const climbed = climb(coarse, found.plan, rounds);
  const fine = { plant, sky: skyOf(run.weather, run.fromMs, run.toMs, fineS), stepS: fineS };
  const achievedJ = playPlan(fine, divided(climbed.plan, coarseS / fineS)) - outsideJ(plant);
  const gridJ = marginFactor * Math.max(0, climbed.broughtJ - found.foundJ);
  const stepsJ = marginFactor * Math.max(0, achievedJ - climbed.broughtJ);
  return {
    boundJ: found.boundJ + gridJ + stepsJ,
    achievedJ,
    plan: climbed.plan,
    searchJ: found.boundJ,
    gridJ,
    stepsJ,
    labels: found.labels,
  };
}
