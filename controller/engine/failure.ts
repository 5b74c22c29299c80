import type { HazardCommand } from './arbitrate.ts';
import { canEmpty } from './pan.ts';
import type { Move } from './sequence/advance.ts';
import type { Situation } from './situation.ts';
import type { EngineState } from './state.ts';

type Failure = EngineState['failure'];

/**
 * A loop that cannot be emptied has proven itself when it circulated for this long [ms]; for longer after its heat
 * alone told that no water moved, since that takes its time to show again.
 */
const provenMs = 600_000;
const heatProvenMs = 7_200_000;

/** Counts a protection that means a failure of the loop. */
export function countFailure(before: Failure, hazard: HazardCommand | null): Failure {
  const cause = hazard?.hazard.fails;
  return cause === undefined ? before : { count: before.count + 1, cause };
}

/** Forgets failures once a full pan has been used and emptied as it should, or has circulated long. */
export function forgiveFailure(
  before: Failure,
  { state, site, runMs }: Situation,
  { phase }: Move,
  hazard: HazardCommand | null,
): Failure {
  if (before.count === 0 || hazard?.hazard.fails !== undefined) return before;
  const old = state.phase;
  const used = state.water.level === 'full' && (old.name === 'circulating' || old.name === 'resting');
  const done = canEmpty(site)
    ? used && phase.name === 'emptying'
    : old.name === 'circulating' &&
      runMs - old.sinceMs >= (before.cause === 'no-flow' ? heatProvenMs : provenMs);
  return done ? { count: 0, cause: null } : before;
}
