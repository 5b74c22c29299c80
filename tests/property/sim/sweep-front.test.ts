import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dominates, frontOf } from '../../../sim/replay/sweep/front.ts';

const trade = fc.record({
  heatJ: fc.integer({ min: 0, max: 6 }),
  costs: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 3, maxLength: 3 }),
});
const trades = fc.array(trade, { minLength: 1, maxLength: 30 });

describe('front of a trade-off', () => {
  it('has no point that another dominates, and each point off it is dominated by one on it', () => {
    fc.assert(
      fc.property(trades, (list) => {
        const front = frontOf(list);
        const on = list.filter((_, index) => front[index]);
        list.forEach((point, index) => {
          if (front[index]) expect(list.some((other) => dominates(other, point))).toBe(false);
          else expect(on.some((other) => dominates(other, point))).toBe(true);
        });
      }),
    );
  });

  it('does not depend on the order of the points', () => {
    fc.assert(
      fc.property(trades, (list) => {
        expect(frontOf(list.toReversed()).toReversed()).toEqual(frontOf(list));
      }),
    );
  });

  it('knows no two points that dominate each other', () => {
    fc.assert(
      fc.property(trade, trade, (a, b) => {
        expect(dominates(a, b) && dominates(b, a)).toBe(false);
      }),
    );
  });
});
