import type { Estimate } from '../../shared-types/tuning.ts';
import type { UsableDay } from './groups.ts';
import { expectedWM2, type PanLine } from './pan-line.ts';
import type { HeldCoefficients } from './stretches.ts';
import { studentHalfWidth } from './student.ts';

/** Sums of a day, or of some, over stretches of equal length. */
export interface Sums {
  /** Given, and what the reference would have given [W/m2]. */
  readonly gave: number;
  readonly expected: number;
  readonly light: number;
  readonly over: number;
}

/** A pan that others are compared with. */
export interface Reference {
  readonly line: PanLine;
  readonly held: HeldCoefficients;
  /** Standard deviation of a day's ratio about that of its group. */
  readonly scatter: number;
}

export function sumsOf({ stretches }: UsableDay, line: PanLine, held: HeldCoefficients): Sums {
  let sums: Sums = { gave: 0, expected: 0, light: 0, over: 0 };
  for (const stretch of stretches)
    sums = plus(sums, {
      gave: stretch.gaveWM2,
      expected: expectedWM2(line, held, stretch),
      light: stretch.lightWM2,
      over: stretch.overAirK,
    });
  return sums;
}

export function plus(a: Sums, b: Sums): Sums {
  return {
    gave: a.gave + b.gave,
    expected: a.expected + b.expected,
    light: a.light + b.light,
    over: a.over + b.over,
  };
}

/** Scatter of days about their groups, of all groups together; at least one of them holds two days. */
export function scatterOf(groups: readonly (readonly Sums[])[]): number {
  let squares = 0;
  let freedom = 0;
  for (const days of groups) {
    const ratios = days.map(({ gave, expected }) => gave / expected);
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
    squares += ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0);
    freedom += ratios.length - 1;
  }
  return Math.sqrt(squares / freedom);
}

/** Given over expected, with what the scatter of so many days and the reference's own error leave open. */
export function ratioOf({ gave, expected, light, over }: Sums, days: number, reference: Reference): Estimate {
  const { line, scatter } = reference;
  const value = gave / expected;
  const [a, b] = [light / expected, -over / expected];
  const [[vA = 0, vAB = 0] = [], [, vB = 0] = []] = line.covariance;
  const own = value * value * (a * a * vA + 2 * a * b * vAB + b * b * vB);
  const half = studentHalfWidth(Math.max(2, line.days - 1)) * Math.sqrt((scatter * scatter) / days + own);
  return { value, low: value - half, high: value + half };
}
