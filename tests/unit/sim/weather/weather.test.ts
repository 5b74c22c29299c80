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
    other.at(midnightMs - 90 * 86_400_000);
    expect(other.at(midnightMs + 23_456_789)).toEqual(one.at(midnightMs + 23_456_789));
  });

  it('differs from seed to seed', () => {
    const noonMs = midnightMs + 720 * minuteMs;
    const seen = [1, 2, 3, 4, 5].map((seed) => createWeather({ location, seed }).at(noonMs).windMs);
    expect(new Set(seen).size).toBe(5);
  });

  it.each(dayKinds)('%s: believable all day', (kind) => {
    for (const now of minutes(of(kind))) {
      expect(now.irradianceWM2).toBeGreaterThanOrEqual(0);
      // A cloud's bright edge adds a little to a clear sky.
      expect(now.irradianceWM2).toBeLessThanOrEqual(1.13 * haurwitzWM2(now.sunZenithDeg));
      expect(now.beamWM2).toBeGreaterThanOrEqual(0);
      expect(now.diffuseWM2).toBeGreaterThanOrEqual(0);
      expect(now.beamWM2 + now.diffuseWM2).toBe(now.irradianceWM2);
      expect(now.sunAzimuthDeg).toBeGreaterThanOrEqual(0);
      expect(now.sunAzimuthDeg).toBeLessThanOrEqual(360);
      expect(Math.min(now.rainMmH, now.snowMmH)).toBeGreaterThanOrEqual(0);
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

  it.each(['frost-night', 'frost-wind', 'frost-after-sun', 'snowy'] as const)(
    '%s: freezes in July as well when asked for',
    (kind) => {
      const weather = of(kind);
      const july = Array.from({ length: 96 }, (_, i) => weather.at(Date.UTC(2031, 6, 10, 2) + i * 900_000));
      expect(Math.min(...july.map(({ airC }) => airC))).toBeLessThan(-0.5);
    },
  );

  it('frost after sun: warm at noon, frost in the late evening, and calm', () => {
    const [noon, evening] = minutes(of('frost-after-sun')).filter(
      (_, minute) => minute === 840 || minute === 1290,
    );
    expect(noon?.airC).toBeGreaterThan(10);
    expect(noon?.irradianceWM2).toBeGreaterThan(500);
    expect(evening?.airC).toBeLessThan(0);
    expect(evening?.windMs).toBeLessThan(2);
  });

  it('front at noon: sun before, then rain, wind and cold', () => {
    const day = minutes(of('front-at-noon'));
    const mean = (from: number, to: number, key: 'airC' | 'windMs' | 'rainMmH' | 'beamWM2') =>
      day.slice(from, to).reduce((sum, now) => sum + now[key], 0) / (to - from);
    expect(mean(540, 660, 'beamWM2')).toBeGreaterThan(200);
    expect(mean(800, 1000, 'beamWM2')).toBe(0);
    expect(mean(540, 660, 'rainMmH')).toBe(0);
    expect(mean(800, 1260, 'rainMmH')).toBeGreaterThan(0.1);
    expect(mean(800, 900, 'windMs')).toBeGreaterThan(1.5 * mean(540, 660, 'windMs'));
    expect(mean(800, 900, 'airC')).toBeLessThan(mean(600, 660, 'airC') - 2);
  });

  it('rains on rainy days, snows on snowy ones, and stays dry on the others', () => {
    const falls = (kind: DayKind) => {
      const days = [1, 2, 3].flatMap((seed) => minutes(of(kind, seed)));
      return {
        rain: days.some(({ rainMmH }) => rainMmH > 0.5),
        snow: days.some(({ snowMmH }) => snowMmH > 0.5),
      };
    };
    expect(falls('rainy')).toEqual({ rain: true, snow: false });
    expect(falls('snowy')).toEqual({ rain: false, snow: true });
    expect(falls('overcast')).toEqual({ rain: false, snow: false });
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
