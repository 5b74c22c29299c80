import { CholeskyDecomposition, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { jacobianOf } from './jacobian.ts';
import type { Found, LeastSquaresProblem, NotFound } from './problem.ts';

const usualTolerance = 1e-10;
const stuckWords = 'no step from here makes the misfit less';
/** So many steps in a row that were hardly worth taking end it: a function with kinks promises more than it keeps. */
const mostSlowSteps = 2;
/** Damping at the beginning, and by what it falls and rises, as Marquardt 1963 does it. */
const firstDamping = 1e-3;
const dampingFactor = 10;
const leastDamping = 1e-12;
const mostDamping = 1e12;
/** Directions weaker than this against the strongest carry nothing but rounding. */
const leastSingular = 1e-10;

interface Place {
  readonly parameters: readonly number[];
  readonly residuals: Float64Array;
  readonly sumOfSquares: number;
}

/**
 * Makes a sum of squares least by the method of Levenberg and Marquardt, with bounds kept by projection.
 *
 * Source: Marquardt, SIAM Journal on Applied Mathematics 11 (1963) 431, from memory. A parameter that presses against
 * its bound is held there for the step. Never throws; a search that does not end gives no number.
 */
export function leastSquares(problem: LeastSquaresProblem): Found | NotFound {
  const { start, goOn, mostIterations = 50 } = problem;
  let place = placeAt(problem, inBounds(problem, start));
  if (!Number.isFinite(place.sumOfSquares))
    return notFound('the loop cannot be computed where the search begins');
  let damping = firstDamping;
  let slowSteps = 0;
  for (let iteration = 1; iteration <= mostIterations; iteration++) {
    const slope = slopeAt(problem, place);
    if (!slope.whole.to1DArray().every(Number.isFinite))
      return notFound('the loop cannot be computed beside where the search came to');
    const next = stepFrom(problem, place, slope, damping);
    if (next === 'ended' || slowSteps === mostSlowSteps) return endAt(place, slope, iteration);
    if (next === 'stuck')
      return slowSteps > 0
        ? endAt(place, slope, iteration)
        : { ...notFound(stuckWords), stuckAt: place.parameters };
    const gained = place.sumOfSquares - next.place.sumOfSquares;
    ({ place, damping } = next);
    slowSteps = gained > leastGain(problem, place) ? 0 : slowSteps + 1;
    if (goOn?.(iteration, place.sumOfSquares) === false) return notFound('it was given up');
  }
  return notFound(`${mostIterations} steps did not end it`);
}

/** What a step must lower the sum of squares by to be worth taking. */
function leastGain({ tolerance = usualTolerance, variance }: LeastSquaresProblem, place: Place): number {
  const freedom = Math.max(1, place.residuals.length - place.parameters.length);
  return tolerance * (variance ?? place.sumOfSquares / freedom);
}

const notFound = (why: string): NotFound => ({ converged: false, why });

interface Slope {
  readonly whole: Matrix;
  readonly jacobian: Matrix;
  /** J'J over the free parameters, and -J'r. */
  readonly curvature: Matrix;
  readonly downhill: Matrix;
  /** Numbers of the parameters that do not press against a bound. */
  readonly free: readonly number[];
}

function slopeAt(problem: LeastSquaresProblem, { parameters, residuals }: Place): Slope {
  const whole = jacobianOf(problem, parameters, residuals);
  const down = whole.transpose().mmul(Matrix.columnVector(residuals)).mul(-1);
  const free = [...parameters.keys()].filter(
    (index) => !presses(problem, parameters, index, down.get(index, 0)),
  );
  const jacobian = whole.subMatrixColumn(free);
  return {
    whole,
    jacobian,
    curvature: jacobian.transpose().mmul(jacobian),
    downhill: down.subMatrixRow(free),
    free,
  };
}

function presses(
  { least, most, fixed }: LeastSquaresProblem,
  parameters: readonly number[],
  index: number,
  down: number,
): boolean {
  if (fixed?.[index] === true) return true;
  const value = parameters[index] as number;
  return (down < 0 && value === least?.[index]) || (down > 0 && value === most?.[index]);
}

type Stepped = { readonly place: Place; readonly damping: number } | 'ended' | 'stuck';

/** Raises the damping until a step lowers the sum of squares; ended when not even the undamped one is worth taking. */
function stepFrom(problem: LeastSquaresProblem, place: Place, slope: Slope, first: number): Stepped {
  const { parameters, sumOfSquares } = place;
  const promised = (step: Matrix) => step.transpose().mmul(slope.downhill).get(0, 0);
  if (slope.free.length === 0 || promised(dampedStep(slope, leastDamping)) <= leastGain(problem, place))
    return 'ended';
  for (let damping = first; damping <= mostDamping; damping *= dampingFactor) {
    const step = dampedStep(slope, damping);
    const moved = [...parameters];
    for (const [number, index] of slope.free.entries())
      moved[index] = (moved[index] as number) + step.get(number, 0);
    const next = placeAt(problem, inBounds(problem, moved));
    if (next.sumOfSquares < sumOfSquares)
      return { place: next, damping: Math.max(leastDamping, damping / dampingFactor) };
  }
  return 'stuck';
}

/** Marquardt's step: each parameter damped in its own scale. */
function dampedStep({ curvature, downhill }: Slope, damping: number): Matrix {
  const damped = curvature.clone();
  for (let i = 0; i < damped.rows; i++) damped.set(i, i, damped.get(i, i) * (1 + damping) + Number.MIN_VALUE);
  const cholesky = new CholeskyDecomposition(damped);
  return cholesky.isPositiveDefinite()
    ? cholesky.solve(downhill)
    : new SingularValueDecomposition(damped).solve(downhill);
}

function endAt(place: Place, { whole, jacobian, free }: Slope, iterations: number): Found | NotFound {
  const { parameters, sumOfSquares, residuals } = place;
  const own = free.length === 0 ? [] : inverseCurvature(jacobian);
  if (own === undefined) return notFound('some of what was looked for changes nothing that was measured');
  const row = (index: number) => free.indexOf(index);
  const unitCovariance = parameters.map((_, i) => parameters.map((__, j) => own[row(i)]?.[row(j)] ?? 0));
  const atBound = parameters.map((_, index) => !free.includes(index));
  return {
    converged: true,
    parameters,
    sumOfSquares,
    iterations,
    residuals,
    unitCovariance,
    atBound,
    jacobian: whole,
  };
}

/** (J'J)^-1 by the singular values of J, its columns brought to one length first; undefined when J lacks rank. */
function inverseCurvature(jacobian: Matrix): number[][] | undefined {
  const lengths = Array.from({ length: jacobian.columns }, (_, i) => jacobian.getColumnVector(i).norm());
  if (lengths.some((length) => length === 0)) return undefined;
  const scaled = jacobian.clone().divRowVector(lengths);
  const { diagonal, rightSingularVectors } = new SingularValueDecomposition(scaled, { autoTranspose: true });
  const least = Math.min(...diagonal);
  if (least < leastSingular * Math.max(...diagonal)) return undefined;
  const weighed = rightSingularVectors.clone().divRowVector(diagonal).divColumnVector(lengths);
  return weighed.mmul(weighed.transpose()).to2DArray();
}

function placeAt(problem: LeastSquaresProblem, parameters: readonly number[]): Place {
  const residuals = problem.residuals(parameters);
  return { parameters, residuals, sumOfSquares: residuals.reduce((sum, value) => sum + value * value, 0) };
}

function inBounds({ least, most }: LeastSquaresProblem, parameters: readonly number[]): number[] {
  return parameters.map((value, index) => {
    const raised = Math.max(least?.[index] ?? Number.NEGATIVE_INFINITY, value);
    return Math.min(most?.[index] ?? Number.POSITIVE_INFINITY, raised);
  });
}
