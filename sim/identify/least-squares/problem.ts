import type { Matrix } from 'ml-matrix';

/** What is to be made least: a sum of squares over parameters that may be bounded. */
export interface LeastSquaresProblem {
  /**
   * Residuals at a point, each over its own standard deviation; as many at every point. Those of a prior are residuals
   * like any other.
   */
  residuals(parameters: readonly number[]): Float64Array;
  readonly start: readonly number[];
  /** Bounds of each parameter; none when absent. */
  readonly least?: readonly number[];
  readonly most?: readonly number[];
  /** Which parameters stay where they begin; the Jacobian has their columns all the same. None when absent. */
  readonly fixed?: readonly boolean[];
  /**
   * By how much each parameter is moved to see what it does, above 0; small against what matters, large against
   * rounding.
   */
  readonly steps: readonly number[];
  /** Differences to one side alone: half the work, and less exact. */
  readonly oneSided?: boolean;
  /**
   * The search ends when a step promises, or two in a row bring, less than this times the variance of the residuals:
   * such a step moves the point by less than about the root of this, in standard errors. 1e-10 when absent.
   */
  readonly tolerance?: number;
  /** Variance of the residuals where it is known; told from the residuals when absent. */
  readonly variance?: number;
  /** Told after each iteration. @returns false to give up. */
  readonly goOn?: (iteration: number, sumOfSquares: number) => boolean;
  /** 50 when absent. */
  readonly mostIterations?: number;
}

/** Where a search ended. */
export interface Found {
  readonly converged: true;
  readonly parameters: readonly number[];
  readonly sumOfSquares: number;
  readonly iterations: number;
  /** The residuals there. */
  readonly residuals: Float64Array;
  /**
   * (J'J)^-1: the covariance of the parameters where each residual has the standard deviation 1; times the variance of
   * the residuals where all have the same unknown one. A parameter that is fixed or ended at a bound has a row of
   * noughts.
   */
  readonly unitCovariance: readonly (readonly number[])[];
  /** Which parameters ended at a bound that they press against, or were fixed. */
  readonly atBound: readonly boolean[];
  /** What each residual does with each parameter there: one row a residual. */
  readonly jacobian: Matrix;
}

/** A search that found nothing; there is no number to be had from it. */
export interface NotFound {
  readonly converged: false;
  readonly why: string;
  /** Where no step led further down, though steps promised to; absent where it failed otherwise. */
  readonly stuckAt?: readonly number[];
}
