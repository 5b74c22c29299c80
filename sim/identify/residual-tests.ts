import { at } from '../plant/water.ts';
import type { Misfit } from './model/loop-problem.ts';

/** What the misfits of one channel say over all days. */
export interface ResidualTest {
  readonly samples: number;
  readonly rms: number;
  readonly mean: number;
  /** Correlation of each with the one before, -1 to 1; 0 where there are too few. */
  readonly lagOneCorrelation: number;
  /**
   * Runs of one sign less those expected of independent signs, in standard deviations (Wald & Wolfowitz 1940); below
   * about -2 neighbours belong together.
   */
  readonly runsZ: number;
}

const leastPairs = 8;

/** @param misfits - Those of one channel. */
export function residualTest(misfits: readonly Misfit[]): ResidualTest {
  const all = misfits.flatMap(({ apart }) => [...apart]);
  const samples = all.length;
  const mean = all.reduce((sum, value) => sum + value, 0) / Math.max(1, samples);
  const squares = all.reduce((sum, value) => sum + value * value, 0);
  return {
    samples,
    rms: Math.sqrt(squares / Math.max(1, samples)),
    mean,
    lagOneCorrelation: lagOne(misfits, squares / Math.max(1, samples)),
    runsZ: runsZ(all),
  };
}

/** About nought, not about the mean: what all share is a misfit as well. Only neighbouring blocks are pairs. */
function lagOne(misfits: readonly Misfit[], variance: number): number {
  let sum = 0;
  let pairs = 0;
  for (const { apart, blocks } of misfits)
    for (let i = 1; i < apart.length; i++) {
      if (blocks[i] !== (blocks[i - 1] as number) + 1) continue;
      sum += (apart[i] as number) * (apart[i - 1] as number);
      pairs++;
    }
  if (pairs < leastPairs || variance === 0) return 0;
  return Math.min(1, Math.max(-1, sum / pairs / variance));
}

function runsZ(values: readonly number[]): number {
  const above = values.filter((value) => value > 0).length;
  const below = values.length - above;
  if (above === 0 || below === 0) return 0;
  let runs = 1;
  for (let i = 1; i < values.length; i++) if (at(values, i) > 0 !== at(values, i - 1) > 0) runs++;
  const expected = (2 * above * below) / values.length + 1;
  const variance = ((expected - 1) * (expected - 2)) / (values.length - 1);
  return variance > 0 ? (runs - expected) / Math.sqrt(variance) : 0;
}
