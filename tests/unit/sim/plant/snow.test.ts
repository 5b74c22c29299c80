import { describe, expect, it } from 'vitest';
import { snowAfter, snowCover } from '../../../../sim/plant/snow.ts';

describe('snow on the sheet', () => {
  it('keeps sun away and cold out, the more of it the more', () => {
    expect(snowCover(0)).toEqual({ sunFraction: 1, resistanceM2KW: 0, meltWM2K: 0 });
    const thin = snowCover(1);
    const thick = snowCover(15);
    expect(thick.sunFraction).toBeLessThan(thin.sunFraction);
    expect(thick.sunFraction).toBeCloseTo(0.15, 12);
    // A tenth of a metre at 0.15 W/mK.
    expect(thick.resistanceM2KW).toBeCloseTo(0.1 / 0.15, 12);
  });

  it('gathers as it falls and goes as it melts, never below none', () => {
    expect(snowAfter(0, 2, 0, -2, 1800)).toBeCloseTo(1, 12);
    expect(snowAfter(5, 0, 333_500, -2, 10)).toBeCloseTo(4, 12);
    expect(snowAfter(0.1, 0, 333_500, -2, 10)).toBe(0);
    expect(snowAfter(0, 0, 0, -2, 10)).toBe(0);
  });

  it('thaws in mild air by 2 to 6 mm a day for each degree (common practice)', () => {
    const lostKgM2 = 30 - snowAfter(30, 0, 0, 5, 86_400);
    expect(lostKgM2 / 5).toBeGreaterThan(2);
    expect(lostKgM2 / 5).toBeLessThan(6);
  });
});
