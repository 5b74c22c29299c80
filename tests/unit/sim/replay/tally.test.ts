import { describe, expect, it } from 'vitest';
import { createTally, noTotals } from '../../../../sim/replay/tally.ts';

const total = (heatHomeJ: number, starts: number) => ({ ...noTotals, heatHomeJ, starts });

describe('tally of running totals', () => {
  it('adds what was gained since its base', () => {
    const tally = createTally(total(100, 3));
    for (const reading of [total(110, 3), total(150, 4)]) tally.read(reading);
    expect(tally.gained()).toEqual(total(50, 1));
  });

  it('goes on when the totals began anew', () => {
    const tally = createTally(total(100, 3));
    for (const reading of [total(110, 4), total(7, 1), total(9, 1)]) tally.read(reading);
    expect(tally.gained()).toEqual(total(19, 2));
  });
});
