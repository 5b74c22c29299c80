import { Matrix, solve } from 'ml-matrix';
import { at } from '../plant/water.ts';
import type { Posterior } from './posterior.ts';

/** A trait that is known no better than this share of what was known beforehand is held. A design choice. */
const heldAbove = 0.8;

/** What the data can tell, and where it stands once the other traits are brought back to their usual values. */
export interface Told {
  /** Numbers of what was fitted, and of the traits that are held. */
  readonly fitted: readonly number[];
  readonly held: readonly number[];
  /** Most likely values of all with the held ones at their usual values. */
  readonly values: readonly number[];
  /** Covariance of those of the fitted ones. */
  readonly covariance: number[][];
}

/**
 * Holds the traits of which the data tell nothing.
 *
 * The others, what sensors show wrong among them, move along by K = Cfh Chh^-1, as their covariance C has it. A held
 * trait truly lies anywhere in what was known of it beforehand, V, and no longer where the data would have it: what the
 * others moved along may be wrong by K (V - Chh) K', which is added to what is not known of them. For what was told of
 * the held ones is independent of how far the truth still is from it, as it is for any best estimate by normal
 * distributions.
 */
export function toldOf({ known, values, covariance }: Posterior): Told {
  const entry = (i: number, j: number) => covariance[i]?.[j] ?? 0;
  const sdOf = (index: number) => known[index]?.sd ?? 0;
  const isHeld = (index: number) =>
    known[index]?.trait !== undefined && Math.sqrt(entry(index, index)) > heldAbove * sdOf(index);
  const mean = (index: number) => known[index]?.mean ?? 0;
  const held = [...known.keys()].filter(isHeld);
  const fitted = [...known.keys()].filter((index) => !isHeld(index));
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
