import { Matrix, solve } from 'ml-matrix';
import type { TraitName } from '../plant/traits.ts';
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
}

/**
 * Holds the traits of which the data tell nothing.
 *
 * The others, what sensors show wrong among them, move along as their covariance has it; their errors stay those with nothing held, so that they
 * hold what is not known of the held ones.
 *
 * @param untellable - Traits that are held whatever their errors are.
 */
export function toldOf(
  { known, values, covariance }: Posterior,
  untellable: readonly TraitName[] = [],
): Told {
  const entry = (i: number, j: number) => covariance[i]?.[j] ?? 0;
  const isHeld = (index: number) => {
    const { trait, sd = 0 } = known[index] ?? {};
    if (trait === undefined) return false;
    return untellable.includes(trait) || Math.sqrt(entry(index, index)) > heldAbove * sd;
  };
  const mean = (index: number) => known[index]?.mean ?? 0;
  const held = [...known.keys()].filter(isHeld);
  const fitted = [...known.keys()].filter((index) => !isHeld(index));
  if (held.length === 0) return { fitted, held, values };
  const pull = solve(
    new Matrix(held.map((i) => held.map((j) => entry(i, j)))),
    Matrix.columnVector(held.map((i) => mean(i) - at(values, i))),
  ).to1DArray();
  const brought = values.map((value, index) =>
    held.includes(index)
      ? mean(index)
      : held.reduce((moved, i, number) => moved + entry(index, i) * at(pull, number), value),
  );
  return { fitted, held, values: brought };
}
