import { describe, expect, it } from 'vitest';
import { toldOf } from '../../../sim/identify/held.ts';

const trait = (name: 'stillLossWM2K' | 'contactWM2K', mean: number, sd: number) => ({
  trait: name,
  key: name,
  mean,
  sd,
  least: 0,
  most: 1000,
});
const known = [trait('stillLossWM2K', 10, 2), trait('contactWM2K', 250, 100)];

describe('what the data can tell', () => {
  it('is all when every error is narrower than what was known', () => {
    const values = [11, 300];
    const covariance = [
      [1, 0],
      [0, 100],
    ];
    expect(toldOf({ known, values, covariance })).toEqual({
      fitted: [0, 1],
      held: [],
      values,
      covariance,
    });
  });

  it('is not a trait whose error is four fifths of what was known; the other follows', () => {
    const covariance = [
      [1, 40],
      [40, 6401],
    ];
    const told = toldOf({ known, values: [11, 300], covariance });
    expect([told.fitted, told.held]).toEqual([[0], [1]]);
    expect(told.values[1]).toBe(250);
    expect(told.values[0]).toBeCloseTo(11 + (40 / 6401) * (250 - 300), 12);
    // The held one may be anywhere in what was known of it: a variance of 10000, no longer 6401.
    expect(told.covariance).toHaveLength(1);
    expect(told.covariance[0]?.[0]).toBeCloseTo(1 + (40 / 6401) ** 2 * (10_000 - 6401), 12);
  });

  it('is a trait whose error is just that', () => {
    const covariance = [
      [1, 0],
      [0, 6400],
    ];
    expect(toldOf({ known, values: [11, 300], covariance }).held).toEqual([]);
  });

  it('is nothing when nothing is told: all stand where they usually do', () => {
    const covariance = [
      [4, 0],
      [0, 10_000],
    ];
    expect(toldOf({ known, values: [11, 300], covariance })).toEqual({
      fitted: [],
      held: [0, 1],
      values: [10, 250],
      covariance: [],
    });
  });

  it('is whatever a sensor shows wrong, however little is known of it, which moves along with what is held', () => {
    const sensor = {
      sensor: { channel: 'ambientC' as const, kind: 'offset' as const },
      ...{ key: 'offset of ambientC', mean: 0, sd: 0.3, least: -1e9, most: 1e9 },
    };
    const covariance = [
      [4, 0.1],
      [0.1, 0.09],
    ];
    const told = toldOf({
      known: [known[0] as (typeof known)[number], sensor],
      values: [12, 0.2],
      covariance,
    });
    expect([told.fitted, told.held]).toEqual([[1], [0]]);
    expect(told.values[1]).toBeCloseTo(0.2 + (0.1 / 4) * (10 - 12), 12);
  });
});
