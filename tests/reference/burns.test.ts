import { describe, expect, it } from 'vitest';
import { burnTimes, cautions, legionella } from '../../shared-types/cautions.ts';

/**
 * Serious burn: 48.9 °C 5 min; 54.4 °C 30 s; 60 °C about 5 s; 65.6 °C 1.5 to 2 s. Several published tables, which
 * differ by up to 30 %; hence the range of each row.
 */
describe('water that burns', () => {
  const rows = [
    [48.9, 300, 0.3],
    [54.4, 30, 0.3],
    [60, 5, 0.3],
    [65.6, 1.75, 0.15],
  ] as const;
  it.each(rows)('of %d °C takes about %d s', (waterC, seconds, off) => {
    const row = burnTimes.find((one) => one.waterC === waterC);
    expect(row?.leastS).toBeCloseTo(seconds * (1 - off), 1);
    expect(row?.mostS).toBeCloseTo(seconds * (1 + off), 1);
  });

  it('does so sooner the hotter it is', () => {
    for (let i = 1; i < burnTimes.length; i++)
      expect(burnTimes[i]?.mostS).toBeLessThan(burnTimes[i - 1]?.leastS ?? 0);
  });
});

/** Growth at 20 to 45 °C; a store at 60 °C or more, 50 °C at outlets: HSE, HSG274 part 2. */
describe('hygiene', () => {
  it('stands in the caution with its numbers', () => {
    expect(legionella).toEqual({ growsFromC: 20, growsToC: 45, storedAtC: 60, outletC: 50 });
    const { text } = cautions.hygiene;
    for (const figure of ['20 to 45 °C', '60 °C or more', '50 °C within a minute', 'below 20 °C'])
      expect(text).toContain(figure);
  });
});

describe('every caution', () => {
  it.each(Object.entries(cautions))('%s has words and a source', (_, { title, text, source }) => {
    expect(text).toMatch(/^[A-Z].*\.$/);
    expect([title, source]).not.toContain('');
  });
});
