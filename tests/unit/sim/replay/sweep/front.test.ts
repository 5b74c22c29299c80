import { describe, expect, it } from 'vitest';
import { dominates, frontOf } from '../../../../../sim/replay/sweep/front.ts';

const trade = (heatJ: number, ...costs: number[]) => ({ heatJ, costs });

describe('the front of a trade-off', () => {
  it('keeps what nothing beats', () => {
    const trades = [
      trade(5, 2, 1),
      trade(4, 2, 1),
      trade(5, 3, 1),
      trade(6, 9, 9),
      trade(1, 0, 0),
      trade(5, 2, 2),
    ];
    expect(frontOf(trades)).toEqual([true, false, false, true, true, false]);
  });

  it('keeps equal ones together', () => {
    expect(frontOf([trade(5, 2), trade(5, 2)])).toEqual([true, true]);
    expect(dominates(trade(5, 2), trade(5, 2))).toBe(false);
  });

  it.each([
    [trade(5, 2), trade(4, 2), true],
    [trade(5, 1), trade(5, 2), true],
    [trade(5, 2), trade(4, 1), false],
    [trade(4, 1), trade(5, 2), false],
    [trade(5, 1, 3), trade(5, 2, 2), false],
  ])('%j against %j: %s', (a, b, expected) => {
    expect(dominates(a, b)).toBe(expected);
  });
});
