import type { Estimate } from '../../shared-types/tuning.ts';
import type { UsableDay } from './groups.ts';
import { expectedWM2, freedomOf, type PanLine } from './pan-line.ts';
import type { HeldCoefficients } from './stretches.ts';
import { bandAbout } from './student.ts';

/** Sums over the stretches of a day, or of some days. */
export interface Sums {
  /** Given, and what the reference would have given [W/m2]. */
  readonly gave: number;
  readonly expected: number;
  readonly light: number;
  readonly over: number;
  /** Stretches, and the sum over days of the squares of their number. */
  readonly count: number;
  readonly countSquares: number;
}

/** A pan that others are compared with. */
export interface Reference {
  readonly line: PanLine;
  readonly held: HeldCoefficients;
  /** Standard deviation of a day's mean heat about that of its group under the same weather [W/m2]. */
  readonly scatterWM2: number;
}

export function sumsOf({ stretches }: UsableDay, line: PanLine, held: HeldCoefficients): Sums {
  const sum = (value: (stretch: (typeof stretches)[number]) => number) =>
    stretches.reduce((all, stretch) => all + value(stretch), 0);
  return {
    gave: sum(({ gaveWM2 }) => gaveWM2),
    expected: sum((stretch) => expectedWM2(line, held, stretch)),
    light: sum(({ lightWM2 }) => lightWM2),
    over: sum(({ overAirK }) => overAirK),
    count: stretches.length,
    countSquares: stretches.length ** 2,
  };
}

export function plus(a: Sums, b: Sums): Sums {
  return {
    gave: a.gave + b.gave,
    expected: a.expected + b.expected,
    light: a.light + b.light,
    over: a.over + b.over,
    count: a.count + b.count,
    countSquares: a.countSquares + b.countSquares,
  };
}

/** Scatter of days about their groups [W/m2], of all groups together; at least one of them holds two days. */
export function scatterOf(groups: readonly (readonly Sums[])[]): number {
  let squares = 0;
  let freedom = 0;
  for (const days of groups) {
    const { gave, expected } = days.reduce(plus);
    for (const day of days) squares += ((day.gave - (gave / expected) * day.expected) / day.count) ** 2;
    freedom += days.length - 1;
  }
  return Math.sqrt(squares / freedom);
}

/**
 * Given over expected, with what the scatter of days and the reference's own error leave open.
 *
 * Days err by watts and not by shares: a dull day tells less than a bright one.
 */
export function ratioOf(sums: Sums, { line, scatterWM2 }: Reference): Estimate {
  const { gave, expected, light, over, countSquares } = sums;
  const value = gave / expected;
  const [a, b] = [light / expected, -over / expected];
  const [[vA = 0, vAB = 0] = [], [, vB = 0] = []] = line.covariance;
  const own = value * value * (a * a * vA + 2 * a * b * vAB + b * b * vB);
  const error = Math.sqrt((scatterWM2 / expected) ** 2 * countSquares + own);
  return bandAbout(value, error, freedomOf(line));
}
