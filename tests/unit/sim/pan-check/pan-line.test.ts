import { describe, expect, it } from 'vitest';
import { expectedWM2, panLineOf } from '../../../../sim/pan-check/pan-line.ts';
import { plus, ratioOf, type Sums, scatterOf } from '../../../../sim/pan-check/ratio.ts';
import type { Stretch } from '../../../../sim/pan-check/stretches.ts';
import { studentHalfWidth } from '../../../../sim/pan-check/student.ts';

const held = { windOpticalSM: 0.03, windLossJM3K: 4, emissivityRatio: 0.95 };
const stretch = (day: number, changes: Partial<Stretch>): Stretch => ({
  ...{ day: `2031-06-0${day}`, solarHour: 12, gaveWM2: 0, lightWM2: 1, overAirK: 0, windMs: 0 },
  sheetOverK: null,
  ...changes,
});

describe('what a pan is expected to give', () => {
  // The steady form of ISO 9806 for unglazed collectors: eta0 0.90, bu 0.03, b1 10, b2 4 at 1.5 m/s, G'' 725.1724,
  // 10 K over the air: 463.2857 W/m2 (computed).
  it('is the steady form', () => {
    const lightWM2 = (1 - 0.03 * 1.5) * 725.1724;
    const gives = expectedWM2(
      { efficiency: 0.9, lossWM2K: 10 },
      held,
      stretch(1, { lightWM2, overAirK: 10, windMs: 1.5 }),
    );
    expect(Math.abs(gives - 463.2857)).toBeLessThan(5e-4);
  });
});

describe('efficiency and loss of some days', () => {
  const line = { efficiency: 0.87, lossWM2K: 12 };
  const day = (number: number) =>
    [300, 500, 800].map((lightWM2, index) => {
      const one = stretch(number, { lightWM2, overAirK: 4 * number + 3 * index, windMs: number });
      return { ...one, gaveWM2: expectedWM2(line, held, one) };
    });

  it('are found as they are, without error where nothing errs', () => {
    const found = panLineOf([1, 2, 3].flatMap(day), held, 1);
    expect(found).toMatchObject({ days: 3, lossTold: true });
    expect(Math.abs((found?.efficiency ?? 0) - line.efficiency)).toBeLessThan(1e-9);
    expect(Math.abs((found?.lossWM2K ?? 0) - line.lossWM2K)).toBeLessThan(1e-7);
    expect(found?.covariance.flat().every((variance) => Math.abs(variance) < 1e-12)).toBe(true);
  });

  it('are told by three days or more', () => {
    expect(panLineOf([1, 2].flatMap(day), held, 12)).toBeUndefined();
    expect(panLineOf([], held, 12)).toBeUndefined();
  });

  it('have the error of whole days: more stretches of a day that errs tell no more', () => {
    // Days of 1, 2 and 3 for each unit of light: their mean 2, their standard error 1 / root 3.
    const days = (count: number) =>
      [1, 2, 3].flatMap((number) =>
        Array.from({ length: count }, () => stretch(number, { gaveWM2: number })),
      );
    for (const count of [1, 2, 10]) {
      const found = panLineOf(days(count), held, 0);
      expect(Math.abs((found?.efficiency ?? 0) - 2)).toBeLessThan(1e-12);
      expect(Math.abs((found?.covariance[0]?.[0] ?? 0) - 1 / 3)).toBeLessThan(1e-12);
      expect(found).toMatchObject({ lossTold: false, lossWM2K: 0 });
    }
  });

  it('are not told apart where the excess goes with the light, and the loss is then the one that is given', () => {
    const alike = [1, 2, 3].flatMap((number) =>
      [300, 600].map((lightWM2) => {
        const one = stretch(number, { lightWM2, overAirK: lightWM2 / 50 });
        return { ...one, gaveWM2: expectedWM2(line, held, one) };
      }),
    );
    const found = panLineOf(alike, held, 12);
    expect(found).toMatchObject({ lossTold: false, lossWM2K: 12 });
    expect(Math.abs((found?.efficiency ?? 0) - line.efficiency)).toBeLessThan(1e-9);
  });
});

describe('heat over what was expected', () => {
  const sums = (gave: number, expected: number, count = 4): Sums => ({
    ...{ gave, expected, light: 1000, over: 10, count, countSquares: count * count },
  });
  const sure = {
    efficiency: 1,
    lossWM2K: 0,
    covariance: [[0, 0] as const, [0, 0] as const],
    days: 7,
    lossTold: true,
  };

  it('scatters by the watts that days lie beside their group', () => {
    // Two days of 100 and 120 of 110 expected over 2 stretches: 5 W/m2 either way, one degree of freedom.
    const group = [sums(100, 110, 2), sums(120, 110, 2)];
    expect(scatterOf([group])).toBeCloseTo(Math.sqrt(50), 12);
    expect(scatterOf([group, [sums(90, 90)]])).toBeCloseTo(Math.sqrt(50), 12);
  });

  it('is as sure as so many days make it', () => {
    const reference = { line: sure, held, scatterWM2: 10 };
    const half = studentHalfWidth(6) * ((10 * 4) / 400);
    const one = ratioOf(sums(380, 400), reference);
    expect(one.value).toBe(0.95);
    expect(one.high - one.value).toBeCloseTo(half, 12);
    const four = ratioOf([1, 2, 3, 4].map(() => sums(380, 400)).reduce(plus), reference);
    expect(four.high - four.value).toBeCloseTo(half / 2, 12);
  });

  it('is no surer than the reference', () => {
    const unsure = { ...sure, covariance: [[1e-4, 0] as const, [0, 4] as const] };
    const { value, low } = ratioOf(sums(380, 400), { line: unsure, held, scatterWM2: 0 });
    const variance = (1000 / 400) ** 2 * 1e-4 + (10 / 400) ** 2 * 4;
    expect(value - low).toBeCloseTo(studentHalfWidth(6) * 0.95 * Math.sqrt(variance), 12);
  });
});
