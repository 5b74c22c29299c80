import { inverse, Matrix } from 'ml-matrix';
import { at } from '../plant/water.ts';
import { type LoopModel, type Misfit, priorStretch } from './model/loop-problem.ts';
import type { Unknown } from './model/unknowns.ts';
import type { Fitted } from './search.ts';
import { scoreCovariance } from './shared-misfit.ts';

/** What is known in the end of traits and sensors: values and covariance, in the order of the unknowns. */
export interface Posterior {
  readonly known: readonly Unknown[];
  readonly values: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Puts together what the days told, what the considered errors may have moved, and what was known beforehand.
 *
 * A search ends at a bound where the days tell nothing of what is bounded: that is not known exactly then, nor is what
 * goes along with it. So the bounds are let go: values and errors are those of the straight-line problem at the end of
 * the search. With A = J'J, the scatter of J'r is not A, since channels miss together; hence A^-1 (scatter) A^-1, the
 * sandwich of Huber 1967 and White 1982, from memory.
 *
 * Errors that are considered but not looked for shift the others by S = -A^-1 J'Jc for each unit; their variance comes on
 * top: P = C + S Pc S' (the Schmidt form, as in Tapley, Schutz & Born, Statistical Orbit Determination, chapter 6, from
 * memory). Then comes the part of the prior that the search left out.
 */
export function posteriorOf({ unknowns }: LoopModel, { found, misfits }: Fitted): Posterior {
  const { parameters, residuals, jacobian } = found;
  const searchedPlaces = placesOf(unknowns, ({ considered }) => considered !== true);
  const consideredPlaces = placesOf(unknowns, ({ considered }) => considered === true);
  const searched = jacobian.subMatrixColumn(searchedPlaces);
  const inverseCurvature = inverseOf(searched);
  const down = searched.transpose().mmul(Matrix.columnVector(residuals));
  const moved = inverseCurvature.mmul(down).mul(-1);
  const covariance = inverseCurvature
    .mmul(scatterOf(searched, unknowns.length, misfits))
    .mmul(inverseCurvature);
  const numbers = placesOf(
    searchedPlaces.map((place) => unknowns[place] as Unknown),
    ({ trait, sensor }) => trait !== undefined || sensor !== undefined,
  );
  const own = inverseCurvature.subMatrixRow(numbers);
  let total = covariance.subMatrixRow(numbers).subMatrixColumn(numbers);
  if (consideredPlaces.length > 0) {
    const touched = searched.transpose().mmul(withoutPrior(jacobian, unknowns.length, consideredPlaces));
    const sds = consideredPlaces.map((place) => unknowns[place]?.sd ?? 0);
    const shifts = own.mmul(touched).mulRowVector(sds);
    total = total.add(shifts.mmul(shifts.transpose()));
  }
  return combined(
    numbers.map((number) => unknowns[searchedPlaces[number] as number] as Unknown),
    numbers.map((number) => at(parameters, searchedPlaces[number] as number) + moved.get(number, 0)),
    total,
  );
}

/** Covariance of J'r: that of what is known beforehand, and that of the misfits. */
function scatterOf(jacobian: Matrix, priors: number, misfits: readonly Misfit[]): Matrix {
  const lastColumn = jacobian.columns - 1;
  const known = jacobian.subMatrix(0, priors - 1, 0, lastColumn);
  const seen = jacobian.subMatrix(priors, jacobian.rows - 1, 0, lastColumn);
  return known.transpose().mmul(known).add(scoreCovariance(seen, misfits));
}

/** (J'J)^-1 with the columns of J brought to one length first. What is known beforehand is in it, so that it has rank. */
function inverseOf(jacobian: Matrix): Matrix {
  const lengths = Array.from({ length: jacobian.columns }, (_, i) => jacobian.getColumnVector(i).norm());
  const scaled = jacobian.clone().divRowVector(lengths);
  return inverse(scaled.transpose().mmul(scaled)).divRowVector(lengths).divColumnVector(lengths);
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
  const seen = inverse(total);
  const covariance = inverse(Matrix.add(seen, left));
  const weighed = seen
    .mmul(Matrix.columnVector([...values]))
    .add(left.mmul(Matrix.columnVector(known.map(({ mean }) => mean))));
  return { known, values: covariance.mmul(weighed).to1DArray(), covariance: covariance.to2DArray() };
}
