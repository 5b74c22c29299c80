import type { Traits } from '../../plant/traits.ts';
import type { LoggedSpan } from './span.ts';

/**
 * Cold water that comes in is colder than the coldest that the store bottom showed, by what mixes there [K]. A design
 * choice, rather too much than too little: water that is taken for too cold makes draws a little too small, water that is
 * hardly colder than the bottom makes them larger without end.
 */
const belowLowestK = 1.5;
/** It is colder by this at least, whatever is known of it [K]. */
const leastBelowK = 0.3;
const coldestC = 1;
/** No store bottom counts as warmer than this when nothing colder was seen [°C]; a design choice. */
const usualBottomC = 15;

/** Cold water that follows what is drawn [°C]: as the traits say, else as the store bottom shows. */
export function makeUpOf({ minutes }: LoggedSpan, { makeUpC }: Partial<Traits>): number {
  const lowestC = lowestOf(minutes.values.storeBottomC);
  return Math.max(coldestC, Math.min(makeUpC ?? lowestC - belowLowestK, lowestC - leastBelowK));
}

function lowestOf(values: Float64Array | undefined): number {
  let lowestC = usualBottomC;
  for (const value of values ?? []) if (value < lowestC) lowestC = value;
  return lowestC;
}
