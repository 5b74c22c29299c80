import { Matrix } from 'ml-matrix';
import type { LeastSquaresProblem } from './problem.ts';

/** What each residual does with each parameter, by differences: one row a residual, one column a parameter. */
export function jacobianOf(
  problem: LeastSquaresProblem,
  parameters: readonly number[],
  here: Float64Array,
): Matrix {
  const jacobian = new Matrix(here.length, parameters.length);
  for (const index of parameters.keys())
    jacobian.setColumn(index, [...columnOf(problem, parameters, index, here)]);
  return jacobian;
}

/** To both sides, or to one: where only one is asked for, and at a bound. */
function columnOf(
  { residuals, steps, least, most, oneSided = false }: LeastSquaresProblem,
  parameters: readonly number[],
  index: number,
  here: Float64Array,
): Float64Array {
  const value = parameters[index] as number;
  const step = steps[index] as number;
  const canRise = value + step <= (most?.[index] ?? Number.POSITIVE_INFINITY);
  const canFall = value - step >= (least?.[index] ?? Number.NEGATIVE_INFINITY);
  const above = canRise ? value + step : value;
  const below = canFall && !(oneSided && canRise) ? value - step : value;
  const after = above === value ? here : residuals(parameters.with(index, above));
  const before = below === value ? here : residuals(parameters.with(index, below));
  return after.map((risen, row) => (risen - (before[row] as number)) / (above - below));
}
