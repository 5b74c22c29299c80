import { describe, expect, test } from 'vitest';
import type { LoopModel } from '../../../sim/identify/model/loop-problem.ts';
import type { Unknown } from '../../../sim/identify/model/unknowns.ts';
import { search } from '../../../sim/identify/search.ts';

const unknown: Unknown = {
  key: 'any',
  mean: 0,
  sd: 1,
  least: Number.NEGATIVE_INFINITY,
  most: Number.POSITIVE_INFINITY,
};

/** Forty blocks whose misfit is nought at 2, but for a noise of their own. */
function modelOf(leftOver: (value: number) => number): LoopModel {
  const blocks = Array.from({ length: 40 }, (_, block) => block);
  return {
    unknowns: [unknown],
    refineAt: () => undefined,
    misfits: ([value = 0]) => [
      {
        channel: 'panSheetC',
        day: 0,
        blocks,
        apart: Float64Array.from(blocks, (block) => leftOver(value) + 0.2 * Math.sin(37 * block)),
      },
    ],
  };
}

/** Falls towards 2, but somewhere beyond where the search begins it rises first: a step that ends there sees no way down. */
const behindARise = (from: number, to: number) => (value: number) =>
  value - 2 - (value > from && value < to ? 1 : 0);

describe('a search', () => {
  test('ends where the misfit is the least', () => {
    const fitted = search(
      modelOf((value) => value - 2),
      () => true,
    );
    if (!('found' in fitted)) throw new Error(fitted.why);
    expect(fitted.found.parameters[0]).toBeCloseTo(2, 1);
  });

  test.each([
    ['longer', 0, 0.3],
    ['shorter', 0.06, 0.6],
  ])('that got stuck tries %s steps', (_, from, to) => {
    const fitted = search(modelOf(behindARise(from, to)), () => true);
    if (!('found' in fitted)) throw new Error(fitted.why);
    expect(fitted.found.parameters[0]).toBeCloseTo(2, 1);
  });

  test('that is given up says so', () => {
    const fitted = search(
      modelOf((value) => value - 2),
      () => false,
    );
    expect(fitted).toEqual({ converged: false, why: 'it was given up' });
  });
});
