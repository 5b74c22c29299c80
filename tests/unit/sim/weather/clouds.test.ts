import { describe, expect, it } from 'vitest';
import { haurwitzWM2 } from '../../../../sim/weather/clear-sky.ts';
import { cloudDepth } from '../../../../sim/weather/clouds.ts';
import { createWeather } from '../../../../sim/weather/weather.ts';

const location = { latitudeDeg: 44, longitudeDeg: -28, elevationM: 20 };
const minuteMs = 60_000;

/** Minutes of broken days around June with the sun well up. */
const broken = (() => {
  const weather = createWeather({ location, seed: 3, kinds: ['broken'] });
  return Array.from({ length: 40 * 360 }, (_, i) => {
    const day = Math.floor(i / 360);
    const atMs = Date.UTC(2031, 4, 20 + day, 11) + (i % 360) * minuteMs;
    return [weather.at(atMs), weather.at(atMs + minuteMs)] as const;
  });
})();
const shares = broken.map(([now]) => now.irradianceWM2 / haurwitzWM2(now.sunZenithDeg));
const shareOf = (values: readonly number[], holds: (value: number) => boolean) =>
  values.filter(holds).length / values.length;

describe('cloud', () => {
  it.each([0.1, 0.3, 0.5, 0.7, 0.9])('covers the sun for a share of %d of the time', (fraction) => {
    const depths = Array.from({ length: 40_000 }, (_, i) => cloudDepth(i % 37, i * 97_000, fraction));
    // 40000 draws of a noise that is the same for minutes: two standard errors are about 0.01.
    expect(Math.abs(shareOf(depths, (depth) => depth > 0) - fraction)).toBeLessThan(0.02);
  });

  it('leaves no cloud in a clear sky and no hole in a closed one', () => {
    const at = (fraction: number) =>
      Array.from({ length: 5000 }, (_, i) => cloudDepth(1, i * 61_000, fraction));
    expect(Math.max(...at(0))).toBeLessThan(-0.09);
    expect(Math.min(...at(1))).toBeGreaterThan(0.01);
  });

  it('makes a broken day sunlit or shaded, seldom between', () => {
    expect(shareOf(shares, (share) => share < 0.5)).toBeGreaterThan(0.35);
    expect(shareOf(shares, (share) => share > 0.85)).toBeGreaterThan(0.35);
    expect(shareOf(shares, (share) => share >= 0.5 && share <= 0.85)).toBeLessThan(0.15);
  });

  it('takes the beam away behind a cloud', () => {
    const dark = broken.filter(([now]) => cloudDepth(3, now.atMs, 0.5) > 0.02);
    expect(dark.length).toBeGreaterThan(100);
    for (const [now] of dark) {
      expect(now.beamWM2).toBe(0);
      expect(now.diffuseWM2).toBeGreaterThan(0);
    }
  });

  it('changes little in most minutes and by hundreds of W/m2 in a few', () => {
    const ramps = broken.map(([now, next]) => Math.abs(next.irradianceWM2 - now.irradianceWM2));
    // Orders of size from memory of one-minute records of broken sky.
    expect(shareOf(ramps, (ramp) => ramp < 20)).toBeGreaterThan(0.6);
    const great = shareOf(ramps, (ramp) => ramp > 200);
    expect(great).toBeGreaterThan(0.01);
    expect(great).toBeLessThan(0.15);
  });

  it('brightens beyond a clear sky beside a cloud at times, by up to a tenth', () => {
    expect(Math.max(...shares)).toBeGreaterThan(1.03);
    expect(Math.max(...shares)).toBeLessThan(1.13);
    expect(shareOf(shares, (share) => share > 1.01)).toBeLessThan(0.25);
  });
});
