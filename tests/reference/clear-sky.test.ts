import { describe, expect, it } from 'vitest';
import { haurwitzWM2 } from '../../sim/weather/clear-sky.ts';

describe('Haurwitz clear sky with 1098 and 0.059 (Reno, Hansen & Stein, SAND2012-2389)', () => {
  // Digits of a public test of that report's form; 60 deg to the two decimals printed.
  const rows = [
    [5, 48.6298687941956, 1e-9],
    [30, 487.894132885425, 1e-9],
    [50, 778.766689344363, 1e-9],
    [60, 888.27, 0.005],
    [90, 1035.0920325345, 1e-9],
  ] as const;
  it.each(rows)('elevation %d deg', (elevation, irradiance, tolerance) => {
    expect(Math.abs(haurwitzWM2(90 - elevation) - irradiance)).toBeLessThan(tolerance);
  });

  it('is not the form with 0.057, which gives more', () => {
    // Computed from the other printed constant by another program.
    expect(haurwitzWM2(40)).toBeLessThan(780.8 - 1);
  });

  it('is dark with the sun at or below the horizon', () => {
    expect([90, 90.1, 120, 180].map(haurwitzWM2)).toEqual([0, 0, 0, 0]);
  });
});
