import { heldFor, hold } from '../blocks/hold.ts';
import type { Situation } from '../situation.ts';
import type { UpkeepMemory } from './memory.ts';
import { fullFlowLMin } from './pump-signs.ts';

/** Shares of the full flow below which it is low, and from which it is well again. Design choices. */
const lowFraction = 0.7;
const wellFraction = 0.8;
/** A pan that fills lifts its water over the edge: so much less is usual then; a design choice. */
const fillingFraction = 0.55;
/** A flow that fell to less than this share of what was told is told anew; a design choice. */
const tellFraction = 0.8;
/** For so long it has to be low, and smoothed before it counts as well again [ms]; design choices. */
const lowHoldMs = 600_000;
const leastSmoothedMs = 300_000;

/** Since when the smoothed flow is too low. */
export function lowSince(
  beforeMs: number | null,
  flowLMin: number | null,
  situation: Situation,
): number | null {
  const { state, site, runMs } = situation;
  if (flowLMin === null) return null;
  const least = state.phase.name === 'filling' ? fillingFraction : lowFraction;
  return hold(beforeMs, flowLMin < least * fullFlowLMin(site, state.learnt), runMs);
}

/** Brings up whether the flow is low: it stays so until it was seen to be well again in a full loop. */
export function updateFlowLow(before: UpkeepMemory, situation: Situation): UpkeepMemory {
  const { flowLMin, lowMs, smoothedMs } = situation.state.flow;
  const { lowFlowLMin } = before;
  if (flowLMin === null) return before;
  if (heldFor(lowMs, situation.runMs, lowHoldMs))
    return lowFlowLMin === null || flowLMin < tellFraction * lowFlowLMin
      ? { ...before, lowFlowLMin: flowLMin }
      : before;
  if (lowFlowLMin === null || smoothedMs < leastSmoothedMs) return before;
  const { state, site } = situation;
  const well =
    state.phase.name === 'circulating' && flowLMin >= wellFraction * fullFlowLMin(site, state.learnt);
  return well ? { ...before, lowFlowLMin: null } : before;
}
