import { describe, expect, it } from 'vitest';
import { type Label, misplacedJ } from '../../../../sim/course/best/label.ts';
import { lossFractions } from '../../../../sim/course/best/loss.ts';
import { merge, worthiest } from '../../../../sim/course/best/merge.ts';
import { partsOf } from '../../../../sim/plant/parts.ts';
import type { Conditions } from '../../../../sim/weather/conditions.ts';
import { blackBodyWM2 } from '../../../../sim/weather/sky.ts';
import { dullNoon, withSun } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

/** A label of which only its worth and the places of its heat are looked at. */
const label = (countedJ: number, heatJ: readonly number[], group = 0): Label =>
  ({ countedJ, heatJ, group, grantedJ: 0 }) as unknown as Label;

it('sees how much heat lies too far out, in the sum from outside in', () => {
  expect(misplacedJ(label(0, [5, 20, 30]), label(0, [2, 18, 40]))).toBe(3);
  expect(misplacedJ(label(0, [2, 18, 40]), label(0, [5, 20, 30]))).toBe(10);
  expect(misplacedJ(label(0, [2, 18, 30]), label(0, [5, 20, 30]))).toBe(0);
});

describe('merging', () => {
  const rich = () => label(100, [30, 100]);
  const poor = () => label(95, [20, 95]);
  const options = { lossFraction: 1, grantAtMostJ: 0, most: 10 };

  it('leaves out what a kept label outdoes even when its misplaced heat is lost', () => {
    const [first, second] = [rich(), poor()];
    expect(merge([second, first], { ...options, lossFraction: 0.5 })).toEqual([first]);
    expect(first.grantedJ).toBe(0);
  });

  it('keeps what it might not outdo, and what has its water elsewhere', () => {
    expect(merge([poor(), rich()], { ...options, lossFraction: 0.51 })).toHaveLength(2);
    expect(merge([label(95, [20, 95], 1), rich()], { ...options, lossFraction: 0 })).toHaveLength(2);
  });

  it('grants what is missing, no more and no less, as far as it may', () => {
    const [first, second] = [rich(), poor()];
    expect(merge([second, first], { ...options, grantAtMostJ: 4.9 })).toHaveLength(2);
    expect(first.grantedJ).toBe(0);
    expect(merge([second, first], { ...options, grantAtMostJ: 5 })).toEqual([first]);
    expect(first.grantedJ).toBe(5);
    expect(worthiest([label(104, [0]), first])).toBe(first);
  });

  it('grants as much as it must to keep no more labels than it may', () => {
    const first = rich();
    expect(merge([poor(), first], { ...options, grantAtMostJ: 1, most: 1 })).toEqual([first]);
    expect(first.grantedJ).toBe(5);
  });
});

describe('what a joule can lose', () => {
  const parts = partsOf(siteOf(demoContent()));
  const night: Conditions = {
    ...dullNoon,
    ...withSun(0),
    windMs: 2,
    airC: 8,
    longWaveWM2: 0.75 * blackBodyWM2(8),
  };
  const mildNight = { ...night, airC: 18, longWaveWM2: 0.9 * blackBodyWM2(18) };
  const sunny = withSun(600);
  const hours = (count: number, conditions: Conditions) =>
    Array.from({ length: 60 * count }, () => conditions);

  it('falls with the time that is left, to nothing an hour and a half after the last gain', () => {
    const fractions = lossFractions(parts, [...hours(4, sunny), ...hours(6, night)], 60, 14);
    expect(fractions[0]).toBeGreaterThan(0.9);
    expect(fractions[0]).toBeLessThan(1);
    expect(fractions.every((fraction, step) => step === 0 || fraction <= (fractions[step - 1] ?? 1))).toBe(
      true,
    );
    expect(fractions[4 * 60 + 88]).toBeGreaterThan(0);
    expect(fractions[4 * 60 + 89]).toBe(0);
  });

  it('is felt all night where mild air still warms the coldest water', () => {
    const fractions = lossFractions(parts, [...hours(4, sunny), ...hours(6, mildNight)], 60, 10);
    expect(fractions[9 * 60]).toBeGreaterThan(0.2);
  });

  it('is more in wind', () => {
    const inWind = (windMs: number) => lossFractions(parts, hours(2, { ...sunny, windMs }), 60, 14)[0] ?? 0;
    expect(inWind(6)).toBeGreaterThan(1.2 * inWind(1));
  });
});
