import { inverse, Matrix } from 'ml-matrix';
import type { HeldCoefficients, Stretch } from './stretches.ts';

/** What some days say of a pan: gave = efficiency * light - (still loss + wind loss * wind) * excess over the air. */
export interface PanLine {
  readonly efficiency: number;
  readonly lossWM2K: number;
  /** Covariance of the two, in their order; zeros for a loss that was held. */
  readonly covariance: readonly (readonly [number, number])[];
  /** Days that told it. */
  readonly days: number;
  readonly lossTold: boolean;
}

/** A loss that is not known to this share of itself is no help to anybody. A design choice. */
const mostLossShare = 0.35;

/**
 * Efficiency and still loss by linear regression.
 *
 * The form is the one of ISO 9806 for unglazed collectors; its terms of wind and sky are held, for a few days of one
 * loop do not tell them. Errors are those of whole days, since what a sky has more than its formula it has all day: the
 * covariance is the one of clusters (Liang & Zeger 1986, from memory).
 *
 * @param heldLossWM2K - Taken where the days do not tell the loss: the efficiency is then fitted alone.
 * @returns undefined of fewer than three days.
 */
export function panLineOf(
  stretches: readonly Stretch[],
  held: HeldCoefficients,
  heldLossWM2K: number,
): PanLine | undefined {
  const days = Map.groupBy(stretches, ({ day }) => day);
  if (days.size < 3) return undefined;
  const both = regress(days, held, ({ lightWM2, overAirK }) => [lightWM2, -overAirK], 0);
  if (both !== undefined && isTold(both)) return { ...asLine(both, days.size), lossTold: true };
  const alone = regress(days, held, ({ lightWM2 }) => [lightWM2], heldLossWM2K);
  if (alone === undefined) return undefined;
  const [efficiency = Number.NaN] = alone.values;
  return {
    efficiency,
    lossWM2K: heldLossWM2K,
    covariance: [
      [alone.covariance.get(0, 0), 0],
      [0, 0],
    ],
    days: days.size,
    lossTold: false,
  };
}

interface Regressed {
  readonly values: readonly number[];
  readonly covariance: Matrix;
}

function isTold({ values, covariance }: Regressed): boolean {
  const [, loss = Number.NaN] = values;
  return Math.sqrt(covariance.get(1, 1)) <= mostLossShare * loss;
}

function asLine({ values, covariance }: Regressed, days: number): Omit<PanLine, 'lossTold'> {
  const [efficiency = Number.NaN, lossWM2K = Number.NaN] = values;
  return {
    efficiency,
    lossWM2K,
    covariance: [
      [covariance.get(0, 0), covariance.get(0, 1)],
      [covariance.get(1, 0), covariance.get(1, 1)],
    ],
    days,
  };
}

function regress(
  days: ReadonlyMap<string, readonly Stretch[]>,
  { windLossJM3K }: HeldCoefficients,
  columnsOf: (stretch: Stretch) => readonly number[],
  lossWM2K: number,
): Regressed | undefined {
  const told = ({ gaveWM2, overAirK, windMs }: Stretch) =>
    gaveWM2 + (lossWM2K + windLossJM3K * windMs) * overAirK;
  const all = [...days.values()];
  const x = new Matrix(all.flat().map((stretch) => [...columnsOf(stretch)]));
  const y = Matrix.columnVector(all.flat().map(told));
  const turned = x.transpose();
  const curvature = turned.mmul(x);
  if (!isSound(curvature)) return undefined;
  const inverted = inverse(curvature);
  const values = inverted.mmul(turned).mmul(y);
  const misfit = y.clone().sub(x.mmul(values));
  const scores = Matrix.zeros(x.columns, x.columns);
  let row = 0;
  for (const own of all) {
    const last = row + own.length - 1;
    const score = x
      .subMatrix(row, last, 0, x.columns - 1)
      .transpose()
      .mmul(misfit.subMatrix(row, last, 0, 0));
    scores.add(score.mmul(score.transpose()));
    row = last + 1;
  }
  const few = all.length / (all.length - 1);
  return { values: values.to1DArray(), covariance: inverted.mmul(scores).mmul(inverted).mul(few) };
}

/** Columns that are nearly one and the same tell nothing of either. */
const leastApart = 1e-6;

function isSound(curvature: Matrix): boolean {
  if (curvature.rows === 1) return curvature.get(0, 0) > 0;
  const [a, b, c] = [curvature.get(0, 0), curvature.get(0, 1), curvature.get(1, 1)];
  return a * c - b * b > leastApart * a * c;
}

/** Degrees of freedom of what the days of a line tell: one for each day but one. */
export const freedomOf = ({ days }: PanLine) => days - 1;

/** What a pan of that kind would have given in a stretch [W/m2]. */
export function expectedWM2(
  { efficiency, lossWM2K }: Pick<PanLine, 'efficiency' | 'lossWM2K'>,
  { windLossJM3K }: HeldCoefficients,
  { lightWM2, overAirK, windMs }: Stretch,
): number {
  return efficiency * lightWM2 - (lossWM2K + windLossJM3K * windMs) * overAirK;
}
