import type { LoopFit } from '../../../shared-types/tuning.ts';
import { traitsOfFit } from '../../identify/loop-file.ts';
import type { Traits } from '../../plant/traits.ts';
import { hashFraction, hashNormal } from '../../weather/random.ts';

/** Which loops a sweep is tried in, and where they came from. */
export interface Loops {
  readonly loops: readonly Partial<Traits>[];
  readonly remarks: readonly string[];
}

const fittedStream = 811;
const usualStream = 812;

/** Between what unglazed collectors lie that were never measured: ranges from memory, those of the usual traits. */
const usualRanges = {
  opticalEfficiency: [0.85, 0.96],
  windOpticalSM: [0.01, 0.04],
  stillLossWM2K: [8, 15],
  windLossJM3K: [2, 5],
} as const satisfies Partial<Record<keyof Traits, readonly [number, number]>>;

/**
 * The best-known loop, then loops drawn at random from what a fit leaves uncertain of it; without a fit, the
 * usual loop and others of its kind. The same seed draws the same.
 */
export function loopsOf(fit: LoopFit | undefined, drawn: number, seed: number): Loops {
  if (fit === undefined)
    return {
      loops: [{}, ...range(drawn).map((index) => usualLoop(seed, index))],
      remarks: [
        'No fit of this loop is kept: it is taken for a usual one, and the bands are those of usual ones.',
      ],
    };
  const factor = factorOf(fit.covariance);
  const normals = (index: number) =>
    fit.covariance.map((_, row) => hashNormal(seed, fittedStream, index * fit.covariance.length + row));
  return {
    loops: [
      traitsOfFit(fit),
      ...range(drawn).map((index) => traitsOfFit(fit, shiftOf(factor, normals(index)))),
    ],
    remarks: [`The loop is that of the fit to ${fit.days.join(', ')}.`],
  };
}

const range = (count: number) => Array.from({ length: count }, (_, index) => index);

function usualLoop(seed: number, index: number): Partial<Traits> {
  const drawn = Object.entries(usualRanges).map(([name, [least, most]], column) => {
    const place = hashFraction(seed, usualStream, index * Object.keys(usualRanges).length + column);
    return [name, least + (most - least) * place];
  });
  return Object.fromEntries(drawn);
}

const shiftOf = (factor: readonly (readonly number[])[], normals: readonly number[]) =>
  factor.map((row) => row.reduce((sum, weight, column) => sum + weight * (normals[column] as number), 0));

/**
 * Lower triangle whose product with its own transpose is the matrix: Cholesky's factor, as textbooks give it. A
 * direction in which the matrix says nothing more is left out.
 */
export function factorOf(matrix: readonly (readonly number[])[]): number[][] {
  const factor = matrix.map((row) => row.map(() => 0));
  matrix.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      const known = range(j).reduce((sum, k) => sum + at(factor, i, k) * at(factor, j, k), 0);
      const rest = (row[j] as number) - known;
      const pivot = at(factor, j, j);
      const value = i === j ? Math.sqrt(Math.max(0, rest)) : pivot === 0 ? 0 : rest / pivot;
      (factor[i] as number[])[j] = value;
    }
  });
  return factor;
}

const at = (matrix: readonly (readonly number[])[], row: number, column: number) =>
  matrix[row]?.[column] as number;
