import { describe, expect, it } from 'vitest';
import { drawnKind } from '../../../../sim/weather/season.ts';
import { createWeather } from '../../../../sim/weather/weather.ts';

const newYearDay = Date.UTC(2031, 0, 1) / 86_400_000;
const kindsOf = (seed: number, days: number) =>
  Array.from({ length: days }, (_, i) => drawnKind(seed, newYearDay + i, 44));

describe('the weather of a make-believe year at 44 deg', () => {
  const location = { latitudeDeg: 44, longitudeDeg: -28, elevationM: 20 };
  const weather = createWeather({ location, seed: 4 });
  const hours = Array.from({ length: 365 * 96 }, (_, i) => weather.at(Date.UTC(2031, 0, 1) + i * 900_000));

  it('brings 1100 to 1700 kWh/m2 of sun', () => {
    const sum = hours.reduce((total, { irradianceWM2 }) => total + irradianceWM2 / 4000, 0);
    expect(sum).toBeGreaterThan(1100);
    expect(sum).toBeLessThan(1700);
  });

  it('freezes in some winter nights and never in summer', () => {
    const frosty = new Set(
      hours.filter(({ airC }) => airC < 0).map(({ atMs }) => new Date(atMs).getUTCMonth()),
    );
    expect([0, 1, 2, 11].some((month) => frosty.has(month))).toBe(true);
    expect([5, 6, 7, 8].some((month) => frosty.has(month))).toBe(false);
    expect(Math.max(...hours.map(({ airC }) => airC))).toBeLessThan(40);
  });

  it('rains and now and then snows, a believable depth in all', () => {
    const fall = hours.reduce((sum, { rainMmH, snowMmH }) => sum + (rainMmH + snowMmH) / 4, 0);
    expect(fall).toBeGreaterThan(200);
    expect(fall).toBeLessThan(1500);
  });
});

describe('kinds of days', () => {
  const wet = new Set(['overcast', 'rainy', 'snowy']);

  it('last: a wet day follows a wet one more often than any other', () => {
    const isWet = (kind: string) => wet.has(kind) || kind === 'front-at-noon';
    const days = [1, 2, 3, 4, 5, 6].flatMap((seed) => kindsOf(seed, 365).map(isWet));
    const all = days.filter(Boolean).length / days.length;
    const after = days.filter((is, i) => is && days[i - 1]).length / days.slice(0, -1).filter(Boolean).length;
    expect(after).toBeGreaterThan(1.8 * all);
  });

  it('turn from settled to wet by a front only', () => {
    const settled = new Set(['clear', 'hazy', 'hot-still', 'frost-night', 'frost-after-sun']);
    const days = kindsOf(7, 2000);
    for (let i = 1; i < days.length; i++)
      expect(settled.has(days[i - 1] ?? '') && wet.has(days[i] ?? '')).toBe(false);
    expect(days).toContain('front-at-noon');
  });
});
