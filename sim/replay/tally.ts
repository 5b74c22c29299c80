import { totalNames } from '../../controller/log/layout.ts';
import type { Totals } from '../../shared-types/engine.ts';

export const noTotals: Totals = {
  heatHomeJ: 0,
  heatLostJ: 0,
  electricityJ: 0,
  pumpRunS: 0,
  starts: 0,
  fills: 0,
};

/** What was added to totals since an earlier reading of them. */
export function since(earlier: Totals, later: Totals): Totals {
  const gained = { ...noTotals };
  for (const name of totalNames) gained[name] = later[name] - earlier[name];
  return gained;
}

/** Adds up what running totals gain from reading to reading. */
export interface Tally {
  read(total: Totals): void;
  gained(): Totals;
}

/** Totals that fell began anew, so all they show by then was gained since. Written out: every step of a replay is read. */
export function createTally(base: Totals): Tally {
  const sum = { ...noTotals };
  let last = base;
  return {
    read: (total) => {
      const from = hasFallen(last, total) ? noTotals : last;
      sum.heatHomeJ += total.heatHomeJ - from.heatHomeJ;
      sum.heatLostJ += total.heatLostJ - from.heatLostJ;
      sum.electricityJ += total.electricityJ - from.electricityJ;
      sum.pumpRunS += total.pumpRunS - from.pumpRunS;
      sum.starts += total.starts - from.starts;
      sum.fills += total.fills - from.fills;
      last = total;
    },
    gained: () => ({ ...sum }),
  };
}

function hasFallen(from: Totals, to: Totals): boolean {
  return (
    to.heatHomeJ < from.heatHomeJ ||
    to.heatLostJ < from.heatLostJ ||
    to.electricityJ < from.electricityJ ||
    to.pumpRunS < from.pumpRunS ||
    to.starts < from.starts ||
    to.fills < from.fills
  );
}
