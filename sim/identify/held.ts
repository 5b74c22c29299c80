import { Matrix, solve } from 'ml-matrix';
import { at } from '../plant/water.ts';
import type { Posterior } from './posterior.ts';

/** A trait that is known no better than this share of what was known beforehand is held. A design choice. */
const heldAbove = 0.8;

/** Which traits the data can tell, and where they stand once the others are brought back to their usual values. */
export interface Told {
  /** Numbers of the traits that were fitted, and of those that are held. */
  readonly fitted: readonly number[];
  readonly held: readonly number[];
  /** Most likely values of all traits with the held ones at their usual values. */
  readonly values: readonly number[];
  /** Covariance of those of the fitted ones. */
  readonly covariance: number[][];
}

/**
 * Holds the traits of which the data tell nothing.
 *
 * The others move along with them by K = Cfh Chh^-1, as their covariance C has it. A held trait truly lies anywhere in
 * what was known of it beforehand, V, and is no longer where the data would have it: what the others moved along may be
 * wrong by K (V - Chh) K', which is added to what is not known of them. For what was told of the held ones is
 * independent of how far the truth still is from it, as it is for any best estimate by normal distributions.
 */
export function toldOf({ traits, values, covariance }: Posterior): Told {
  const entry = (i: number, j: number) => covariance[i]?.[j] ?? 0;
  const sdOf = (index: number) => traits[index]?.sd ?? 0;
  const isHeld = (index: number) => Math.sqrt(entry(index, index)) > heldAbove * sdOf(index);
  const mean = (index: number) => traits[index]?.mean ?? 0;
  const held = [...traits.keys()].filter(isHeld);
  const fitted = [...traits.keys()].filter((index) => !isHeld(index));
  const own = new Matrix(fitted.map((i) => fitted.map((j) => entry(i, j))));
  if (held.length === 0 || fitted.length === 0)
    return { fitted, held, values: placed(values, held, mean), covariance: own.to2DArray() };
  const heldOwn = new Matrix(held.map((i) => held.map((j) => entry(i, j))));
  const along = solve(heldOwn, new Matrix(held.map((i) => fitted.map((j) => entry(i, j))))).transpose();
  const back = along.mmul(Matrix.columnVector(held.map((i) => mean(i) - at(values, i))));
  const wider = Matrix.diag(held.map((index) => sdOf(index) ** 2)).sub(heldOwn);
  return {
    fitted,
    held,
    values: placed(values, held, mean).map((value, index) =>
      held.includes(index) ? value : value + back.get(fitted.indexOf(index), 0),
    ),
    covariance: own.add(along.mmul(wider).mmul(along.transpose())).to2DArray(),
  };
}

function placed(
  values: readonly number[],
  held: readonly number[],
  mean: (index: number) => number,
): number[] {
  return values.map((value, index) => (held.includes(index) ? mean(index) : value));
}
