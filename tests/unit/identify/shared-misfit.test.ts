import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Misfit } from '../../../sim/identify/model/loop-problem.ts';
import { scoreCovariance } from '../../../sim/identify/shared-misfit.ts';

const misfit = (channel: Channel, apart: readonly number[], first = 0, day = 0): Misfit => ({
  channel,
  day,
  blocks: apart.map((_, index) => first + index),
  apart: Float64Array.from(apart),
});

/** One column in which every row counts alike. */
const ones = (rows: number) => Matrix.ones(rows, 1);
const signs = [1, -1, 1, 1, -1, 1, -1, -1];

describe('what channels miss together', () => {
  it('counts twice over where two say the same', () => {
    const misfits = [
      misfit('panSheetC', signs),
      misfit(
        'panOutletC',
        signs.map((sign) => 3 * sign),
      ),
    ];
    // By themselves sixteen rows make sixteen; each of eight pairs makes four.
    expect(scoreCovariance(ones(16), misfits).get(0, 0)).toBeCloseTo(32, 12);
  });

  it('is nothing where they say the opposite, and half as much more where they half agree', () => {
    const opposite = [
      misfit('panSheetC', signs),
      misfit(
        'panOutletC',
        signs.map((sign) => -sign),
      ),
    ];
    expect(scoreCovariance(ones(16), opposite).get(0, 0)).toBeCloseTo(0, 12);
    const half = signs.map((sign, index) => (index < 6 ? sign : -sign));
    expect(
      scoreCovariance(ones(16), [misfit('panSheetC', signs), misfit('panOutletC', half)]).get(0, 0),
    ).toBeCloseTo(24, 12);
  });

  it('is looked for in the same block of the same day, in eight of them or more', () => {
    const later = [misfit('panSheetC', signs), misfit('panOutletC', signs, 8)];
    const otherDay = [misfit('panSheetC', signs), misfit('panOutletC', signs, 0, 1)];
    const seven = [misfit('panSheetC', signs), misfit('panOutletC', signs, 1)];
    for (const misfits of [later, otherDay, seven])
      expect(scoreCovariance(ones(16), misfits).get(0, 0)).toBeCloseTo(16, 12);
  });

  it('is nothing that a channel without a misfit has', () => {
    const misfits = [
      misfit('panSheetC', signs),
      misfit(
        'panOutletC',
        signs.map(() => 0),
      ),
    ];
    expect(scoreCovariance(ones(16), misfits).get(0, 0)).toBeCloseTo(16, 12);
  });
});
