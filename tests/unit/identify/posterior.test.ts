import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { LoopModel, Misfit } from '../../../sim/identify/model/loop-problem.ts';
import type { Unknown } from '../../../sim/identify/model/unknowns.ts';
import { posteriorOf } from '../../../sim/identify/posterior.ts';
import type { Fitted } from '../../../sim/identify/search.ts';

const still: Unknown = { trait: 'stillLossWM2K', key: 'stillLossWM2K', mean: 10, sd: 2, least: 0, most: 40 };
const pipe: Unknown = { ...still, trait: 'pipeLossWMK', key: 'pipeLossWMK', mean: 0, sd: 1 };
const wind: Unknown = { key: 'scale of windMs', mean: 0, sd: 0.5, least: -1e9, most: 1e9, considered: true };
/** A search takes what is known beforehand three times wider. */
const searchSd = 6;

interface Case {
  readonly unknowns: readonly Unknown[];
  /** Where the search ended. */
  readonly parameters: readonly number[];
  /** Rows of the measured: what each unknown does to it, and its misfit there, over its spread. */
  readonly seen: readonly (readonly number[])[];
  readonly apart: readonly number[];
}

function posterior({ unknowns, parameters, seen, apart }: Case) {
  const sdOf = ({ trait, sd }: Unknown) => (trait === undefined ? sd : 3 * sd);
  const priorRows = unknowns.map((unknown, row) =>
    unknowns.map((_, column) => (row === column ? 1 / sdOf(unknown) : 0)),
  );
  const known = unknowns.map((unknown, index) => ((parameters[index] ?? 0) - unknown.mean) / sdOf(unknown));
  const misfits: Misfit[] = [
    { channel: 'panSheetC', day: 0, blocks: apart.map((_, index) => index), apart: Float64Array.from(apart) },
  ];
  const found = {
    parameters,
    residuals: Float64Array.from([...known, ...apart]),
    jacobian: new Matrix([...priorRows, ...seen.map((row) => [...row])]),
  };
  return posteriorOf({ unknowns } as unknown as LoopModel, { found, misfits } as unknown as Fitted);
}

describe('what is known in the end', () => {
  it('is what was measured and what was known beforehand, each by its variance', () => {
    // Ten rows with the slope -1 say 12.5, give or take 1 over the root of 10; the search ended where it is best by both.
    const end = (12.5 * 10 + 10 / searchSd ** 2) / (10 + 1 / searchSd ** 2);
    const { known, values, covariance } = posterior({
      unknowns: [still],
      parameters: [end],
      seen: Array.from({ length: 10 }, () => [-1]),
      apart: Array.from({ length: 10 }, () => 12.5 - end),
    });
    expect(known).toEqual([still]);
    expect(covariance[0]?.[0]).toBeCloseTo(1 / (10 + 1 / 4), 9);
    expect(values[0]).toBeCloseTo((12.5 * 10 + 10 / 4) / (10 + 1 / 4), 9);
  });

  it('does not rest on where a bound stopped the search', () => {
    const rows = { unknowns: [still], seen: Array.from({ length: 10 }, () => [-1]) };
    const at = (parameter: number) =>
      posterior({
        ...rows,
        parameters: [parameter],
        apart: Array.from({ length: 10 }, () => -1 - parameter),
      });
    expect(at(0).values[0]).toBeCloseTo(at(3).values[0] as number, 9);
    expect(at(0).values[0]).toBeLessThan(0);
    expect(at(0).covariance[0]?.[0]).toBeCloseTo(1 / (10 + 1 / 4), 9);
  });

  it('takes what is known of a sensor once: a search has all of it', () => {
    const sensor: Unknown = {
      sensor: { channel: 'ambientC', kind: 'offset' },
      ...{ key: 'offset of ambientC', mean: 0, sd: 0.5, least: -1e9, most: 1e9 },
    };
    const { known, covariance } = posterior({
      unknowns: [sensor],
      parameters: [0],
      seen: [[-1]],
      apart: [0],
    });
    expect(known).toEqual([sensor]);
    expect(covariance[0]?.[0]).toBeCloseTo(1 / (1 + 4), 9);
  });

  it('is wider by what is considered and not looked for, which has no value of its own', () => {
    const given = {
      unknowns: [still, wind],
      parameters: [10, 0],
      seen: Array.from({ length: 10 }, () => [-1, -4]),
      apart: Array.from({ length: 10 }, () => 0),
    };
    const curvature = 10 + 1 / searchSd ** 2;
    const shift = (0.5 * 10 * 4) / curvature;
    const seen = 1 / (1 / curvature + shift ** 2);
    const { known, covariance } = posterior(given);
    expect(known).toEqual([still]);
    expect(covariance[0]?.[0]).toBeCloseTo(1 / (seen + (1 - 1 / 9) / 4), 9);
    // A trait may be considered as well as a sensor.
    const pipeToo = { ...pipe, considered: true as const, sd: 0.5 };
    const other = posterior({ ...given, unknowns: [still, pipeToo] });
    expect(other.known).toEqual([still]);
    expect(other.covariance[0]?.[0]).toBeCloseTo(covariance[0]?.[0] as number, 9);
  });
});
