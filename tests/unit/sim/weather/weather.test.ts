import { describe, expect, it } from 'vitest';
import { haurwitzWM2 } from '../../../../sim/weather/clear-sky.ts';
import { type DayKind, dayKinds } from '../../../../sim/weather/day-kinds.ts';
import { createWeather, type Weather } from '../../../../sim/weather/weather.ts';

const location = { latitudeDeg: 44, longitudeDeg: -28, elevationM: 20 };
const midnightMs = Date.UTC(2031, 2, 10, 2);
const minuteMs = 60_000;
const of = (kind: DayKind, seed = 1) => createWeather({ location, seed, kinds: [kind] });
const minutes = (weather: Weather, from = 0, to = 1440) =>
  Array.from({ length: to - from }, (_, i) => weather.at(midnightMs + (from + i) * minuteMs));
const sumOf = (weather: Weather) =>
  minutes(weather).reduce((sum, { irradianceWM2 }) => sum + irradianceWM2, 0);

describe('weather', () => {
  it('is the same at an instant whatever was asked before', () => {
    const one = createWeather({ location, seed: 5 });
    const other = createWeather({ location, seed: 5 });
    for (let day = 20; day > 0; day--) other.at(midnightMs + day * 86_400_000);
    expect(other.at(midnightMs + 12_345_678)).toEqual(one.at(midnightMs + 12_345_678));
  });

  it('differs from seed to seed', () => {
    const noonMs = midnightMs + 720 * minuteMs;
    const seen = [1, 2, 3, 4, 5].map((seed) => createWeather({ location, seed }).at(noonMs).airC);
    expect(new Set(seen).size).toBe(5);
  });

  it.each(dayKinds)('%s: believable all day', (kind) => {
    for (const now of minutes(of(kind))) {
      expect(now.irradianceWM2).toBeGreaterThanOrEqual(0);
      expect(now.irradianceWM2).toBeLessThanOrEqual(1.02 * haurwitzWM2(now.sunZenithDeg));
      expect(now.humidityFraction).toBeGreaterThan(0.1);
      expect(now.humidityFraction).toBeLessThan(1);
      expect(now.windMs).toBeGreaterThan(0);
      expect(now.windMs).toBeLessThan(20);
      expect(now.longWaveWM2).toBeGreaterThan(150);
    }
  });

  it('orders the kinds by what comes through', () => {
    const sums = (['overcast', 'broken', 'hazy', 'clear'] as const).map((kind) => sumOf(of(kind)));
    expect(sums).toEqual([...sums].sort((a, b) => a - b));
    expect(sums[0]).toBeLessThan(0.4 * (sums[3] ?? 0));
  });

  it('lets clouds pass on a broken day only', () => {
    const swings = (kind: DayKind) => {
      const shares = minutes(of(kind), 600, 840).map(
        (now) => now.irradianceWM2 / haurwitzWM2(now.sunZenithDeg),
      );
      return shares.filter((share, i) => i > 0 && share < 0.6 !== (shares[i - 1] ?? 0) < 0.6).length;
    };
    expect(swings('broken')).toBeGreaterThan(3);
    expect([swings('clear'), swings('overcast')]).toEqual([0, 0]);
  });

  it('brings freezing sheets on frost nights: clear, calm, cold and dry', () => {
    const night = minutes(of('frost-night'), 180, 300);
    const coldest = Math.min(...night.map(({ airC }) => airC));
    expect(coldest).toBeLessThan(2);
    expect(Math.max(...night.map(({ windMs }) => windMs))).toBeLessThan(3);
  });

  it('does not jump at midnight between unlike days', () => {
    const weather = createWeather({ location, seed: 1, kinds: ['frost-night', 'overcast', 'clear'] });
    let before = weather.at(midnightMs);
    for (let minute = 1; minute < 4 * 1440; minute++) {
      const now = weather.at(midnightMs + minute * minuteMs);
      expect(Math.abs(now.airC - before.airC)).toBeLessThan(0.25);
      expect(Math.abs(now.longWaveWM2 - before.longWaveWM2)).toBeLessThan(4);
      before = now;
    }
  });

  it('draws frost nights in the cold season of either hemisphere only', () => {
    const kindsOf = (latitudeDeg: number, fromMs: number) => {
      const weather = createWeather({ location: { ...location, latitudeDeg }, seed: 2 });
      return Array.from({ length: 60 }, (_, day) => weather.kindAt(fromMs + day * 86_400_000));
    };
    const january = Date.UTC(2031, 0, 5, 14);
    const july = Date.UTC(2031, 6, 5, 14);
    expect(kindsOf(56, january)).toContain('frost-night');
    expect(kindsOf(56, july)).not.toContain('frost-night');
    expect(kindsOf(-56, july)).toContain('frost-night');
    expect(kindsOf(-56, january)).not.toContain('frost-night');
  });
});
