import { describe, expect, it } from 'vitest';
import { assertNever } from '../../../controller/engine/assert-never.ts';
import { heldFor, hold } from '../../../controller/engine/blocks/hold.ts';
import { hysteresis } from '../../../controller/engine/blocks/hysteresis.ts';
import { lowPass } from '../../../controller/engine/blocks/low-pass.ts';

describe('hold', () => {
  it('starts at any instant, keeps it, and forgets it when the condition gives way', () => {
    const conditions = [false, true, true, false, true];
    let sinceMs: number | null = null;
    const seen = conditions.map((condition, i) => {
      sinceMs = hold(sinceMs, condition, 7_000_001 + i * 10);
      return sinceMs;
    });
    expect(seen).toEqual([null, 7_000_011, 7_000_011, null, 7_000_041]);
  });

  it('has held once the duration is full', () => {
    expect(heldFor(null, 100, 0)).toBe(false);
    expect(heldFor(100, 100, 0)).toBe(true);
    expect(heldFor(100, 199, 100)).toBe(false);
    expect(heldFor(100, 200, 100)).toBe(true);
  });
});

describe('hysteresis', () => {
  it.each([
    [false, 5, true],
    [false, 4.99, false],
    [true, 4.99, true],
    [true, 3, true],
    [true, 2.99, false],
  ])('was %o, at %d: %o', (wasOn, value, expected) => {
    expect(hysteresis(wasOn, value, 5, 3)).toBe(expected);
  });
});

describe('low-pass', () => {
  it('begins at the value and stays there', () => {
    expect(lowPass(null, 7, 5, 60)).toBe(7);
    expect(lowPass(7, 7, 5, 60)).toBe(7);
  });

  it('comes within a percent of a step in five time constants, and never beyond', () => {
    let value = 0;
    for (let i = 0; i < 300; i++) value = lowPass(value, 1, 1, 60);
    expect(value).toBeGreaterThan(0.99);
    expect(lowPass(0, 1, 1e12, 60)).toBeLessThanOrEqual(1);
  });
});

describe('assertNever', () => {
  it('throws when the types were wrong', () => {
    expect(() => assertNever('a stranger' as never)).toThrow('a stranger');
  });
});
