import type { Traits } from '../../plant/traits.ts';
import { type Followed, type FollowOptions, follow } from './follow.ts';
import type { SkyColumns } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';

/**
 * Cold water that comes in is colder than the coldest that the store bottom showed, by what mixes there [K]. These
 * are tried; design choices.
 */
const triedK = [0.3, 1, 2, 3.5, 5.5] as const;
const coldestC = 1;

/**
 * Cold water that follows what is drawn [°C]: as the traits say, else that with which the draws are the steadiest.
 *
 * Water that is hardly colder than the bottom would have to come in streams where the bottom is at its coldest; water
 * that is much colder, in drops. Only the true one makes an even draw even.
 */
export function makeUpOf(span: LoggedSpan, sky: SkyColumns, options: FollowOptions): number {
  const lowestC = lowestOf(span.minutes.values.storeBottomC);
  const { makeUpC } = options.traits;
  if (makeUpC !== undefined) return Math.max(coldestC, Math.min(makeUpC, lowestC - triedK[0]));
  let best = { makeUpC: Math.max(coldestC, lowestC - 1), unsteady: Number.POSITIVE_INFINITY };
  for (const belowK of triedK) {
    const tried = Math.max(coldestC, lowestC - belowK);
    const traits: Partial<Traits> = { ...options.traits, makeUpC: tried };
    const unsteady = unsteadiness(follow(span, sky, { ...options, traits }));
    if (unsteady < best.unsteady) best = { makeUpC: tried, unsteady };
  }
  return best.makeUpC;
}

function lowestOf(values: Float64Array | undefined): number {
  let lowestC = usualBottomC;
  for (const value of values ?? []) if (value < lowestC) lowestC = value;
  return lowestC;
}

/** No store bottom counts as warmer than this when nothing colder was seen [°C]; a design choice. */
const usualBottomC = 15;

/** How much draws change from window to window beside what is drawn. */
function unsteadiness({ draws: { wantedKgS } }: Followed): number {
  let changes = 0;
  let sum = 0;
  for (let i = 1; i < wantedKgS.length; i++) {
    const before = wantedKgS[i - 1] as number;
    const here = wantedKgS[i] as number;
    sum += here ** 2;
    // Where a draw begins or ends it has to change.
    if (before > 0 && here > 0) changes += (here - before) ** 2;
  }
  return sum === 0 ? Number.POSITIVE_INFINITY : changes / sum;
}
