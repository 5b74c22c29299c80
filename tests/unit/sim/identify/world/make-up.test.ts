import { expect, test } from 'vitest';
import { makeUpOf } from '../../../../../sim/identify/world/make-up.ts';
import type { LoggedSpan } from '../../../../../sim/identify/world/span.ts';

const spanWith = (storeBottomC: readonly number[] | undefined) =>
  ({
    minutes: { values: storeBottomC === undefined ? {} : { storeBottomC: Float64Array.from(storeBottomC) } },
  }) as unknown as LoggedSpan;

test.each([
  ['a little below the coldest that the bottom showed', [30, 12, Number.NaN, 14], 10.5],
  ['below what is usual where the bottom was never that cold', [50, 40], 13.5],
  ['below what is usual without a sensor at the bottom', undefined, 13.5],
  ['never ice', [2], 1],
])('cold water that comes in is %s', (_what, bottomC, makeUpC) => {
  expect(makeUpOf(spanWith(bottomC), {})).toBeCloseTo(makeUpC, 9);
});

test('what is known of it holds, as far as the bottom was not as cold itself', () => {
  expect(makeUpOf(spanWith([12]), { makeUpC: 8 })).toBe(8);
  expect(makeUpOf(spanWith([12]), { makeUpC: 13 })).toBeCloseTo(11.7, 9);
});
