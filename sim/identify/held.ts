import { Matrix, solve } from 'ml-matrix';
import type { TraitName } from '../plant/traits.ts';
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
}

/**
 * Holds the traits of which the data tell nothing.
 *
 * The others move along with them as their covariance has it; their errors stay those with nothing held, so that they
 * hold what is not known of the held ones.
 *
 * @param untellable - Traits that are held whatever their errors are.
 */
export function toldOf(
  { traits, values, covariance }: Posterior,
  untellable: readonly TraitName[] = [],
): Told {
  const entry = (i: number, j: number) => covariance[i]?.[j] ?? 0;
  const isHeld = (index: number) =>
    untellable.includes(traits[index]?.trait as TraitName) ||
    Math.sqrt(entry(index, index)) > heldAbove * (traits[index]?.sd ?? 0);
  const mean = (index: number) => traits[index]?.mean ?? 0;
  const held = [...traits.keys()].filter(isHeld);
  const fitted = [...traits.keys()].filter((index) => !isHeld(index));
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
