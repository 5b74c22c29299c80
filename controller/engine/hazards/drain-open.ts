import { heldFor, hold } from '../blocks/hold.ts';
import { isPumping, type Situation } from '../situation.ts';

/** Time that a drain valve is given to close under a running pump [ms]; a design choice. */
const closingMs = 10_000;

/** Instant since which the device says that the pump runs into an open drain [steady ms]. */
export function drainOpenSince({ state, drainSays, runMs }: Situation): number | null {
  return hold(state.timers.drainOpenMs, isPumping(state) && drainSays === true, runMs);
}

export function hasPumpedIntoDrain({ state, runMs }: Situation): boolean {
  return heldFor(state.timers.drainOpenMs, runMs, closingMs);
}
