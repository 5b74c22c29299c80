import { inverse, Matrix } from 'ml-matrix';
import { at } from '../plant/water.ts';
import { type LoopModel, priorStretch } from './model/loop-problem.ts';
import type { Unknown } from './model/unknowns.ts';
import type { Fitted } from './search.ts';

/** What is known in the end of traits and sensors: values and covariance, in the order of the unknowns. */
export interface Posterior {
  readonly known: readonly Unknown[];
  readonly values: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Puts together what the days told, what the considered errors may have moved, and what was known beforehand.
 *
 * Errors that are considered but not looked for shift the others by S = -C J'Jc for each unit; their variance comes on top:
 * P = C + S Pc S' (the Schmidt form, as in Tapley, Schutz & Born, Statistical Orbit Determination, chapter 6, from
 * memory). Then comes the part of the prior that the search left out.
 */
export function posteriorOf({ unknowns }: LoopModel, { found }: Fitted): Posterior {
  const { parameters, unitCovariance, jacobian } = found;
  const places = placesOf(unknowns, ({ trait, sensor }) => trait !== undefined || sensor !== undefined);
  const consideredPlaces = placesOf(unknowns, ({ considered }) => considered === true);
  const covariance = new Matrix(unitCovariance.map((row) => [...row]));
  const own = covariance.subMatrixRow(places);
  let total = own.subMatrixColumn(places);
  if (consideredPlaces.length > 0) {
    const touched = jacobian.transpose().mmul(withoutPrior(jacobian, unknowns.length, consideredPlaces));
    const sds = consideredPlaces.map((place) => unknowns[place]?.sd ?? 0);
    const shifts = own.mmul(touched).mulRowVector(sds);
    total = total.add(shifts.mmul(shifts.transpose()));
  }
  return combined(
    places.map((place) => unknowns[place] as Unknown),
    places.map((place) => at(parameters, place)),
    total,
  );
}

function placesOf(unknowns: readonly Unknown[], wanted: (unknown: Unknown) => boolean): number[] {
  return [...unknowns.keys()].filter((index) => wanted(unknowns[index] as Unknown));
}

/** The columns of what is considered, without the rows of what is known beforehand. */
function withoutPrior(jacobian: Matrix, priors: number, places: number[]): Matrix {
  const columns = jacobian.subMatrixColumn(places);
  for (let row = 0; row < priors; row++) for (let i = 0; i < places.length; i++) columns.set(row, i, 0);
  return columns;
}

/** Share of what is known beforehand that the search left out, in terms of one over the variance. */
const leftShare = 1 - 1 / priorStretch ** 2;

function combined(known: readonly Unknown[], values: readonly number[], total: Matrix): Posterior {
  const left = Matrix.diag(known.map(({ trait, sd }) => (trait === undefined ? 0 : leftShare / sd ** 2)));
  // A trait at its bound has no variance: what is known of it is as good as nothing beside the rest.
  for (const [i, { sd }] of known.entries())
    if (total.get(i, i) === 0) total.set(i, i, (priorStretch * sd) ** 2);
  const seen = inverse(total);
  const covariance = inverse(Matrix.add(seen, left));
  const weighed = seen
    .mmul(Matrix.columnVector([...values]))
    .add(left.mmul(Matrix.columnVector(known.map(({ mean }) => mean))));
  return { known, values: covariance.mmul(weighed).to1DArray(), covariance: covariance.to2DArray() };
}
