import { lowPass } from '../blocks/low-pass.ts';
import type { Situation } from '../situation.ts';
import type { UpkeepMemory } from './memory.ts';

/** Time constant of the resting pan's level [ms]. */
const smoothingMs = 300_000;
/** After this time at rest the level is no longer that of the flow; a design choice. */
const settledMs = 900_000;
/** The book is closed and opened anew after so long at the latest [ms]. */
const bookMs = 1_800_000;
/** A longer time is shortened to half, so that what was long ago counts less [ms]; a design choice. */
const mostMs = 21_600_000;
/** A leak is told after this time at rest, from this loss and from this rate on; design choices. */
const leastMs = 5_400_000;
const leastMm = 0.8;
const leastMmH = 0.3;
const hourMs = 3_600_000;

/**
 * Keeps the book of a resting pan's level. Water under a sheet does not evaporate, and cooling by 10 K takes no
 * more than 0.4 % of its depth: what it loses at rest, it loses through a leak.
 */
export function updateRestBook(before: UpkeepMemory, situation: Situation): UpkeepMemory {
  const { state, facts, runMs, elapsedMs } = situation;
  const { levelMm } = facts;
  const resting =
    state.phase.name === 'resting' && state.water.level === 'full' && state.flow.runsOnMs === null;
  if (!resting || levelMm === null)
    return before.restMm === null ? before : closed(before, before.restMm, runMs);
  const restMm = lowPass(before.restMm, levelMm, elapsedMs, smoothingMs);
  if (runMs - state.phase.sinceMs < settledMs) return { ...before, restMm };
  if (before.restFromMm === null) return { ...before, restMm, restFromMm: restMm, restFromMs: runMs };
  return runMs - before.restFromMs < bookMs
    ? { ...before, restMm }
    : { ...closed(before, restMm, runMs), restMm, restFromMm: restMm, restFromMs: runMs };
}

/** Takes what was lost since the book was opened into the sums. */
function closed(upkeep: UpkeepMemory, restMm: number, runMs: number): UpkeepMemory {
  const { restFromMm, restFromMs } = upkeep;
  const shut = { ...upkeep, restMm: null, restFromMm: null };
  if (restFromMm === null) return shut;
  const lostMs = upkeep.lostMs + runMs - restFromMs;
  const lostMm = upkeep.lostMm + restFromMm - restMm;
  const share = lostMs > mostMs ? 0.5 : 1;
  return { ...shut, lostMm: lostMm * share, lostMs: lostMs * share };
}

/** How fast the resting pan loses water [mm/h], where that is a leak; else null. */
export function restLeakMmH({ lostMm, lostMs }: UpkeepMemory): number | null {
  if (lostMs < leastMs || lostMm < leastMm) return null;
  const rateMmH = (lostMm * hourMs) / lostMs;
  return rateMmH >= leastMmH ? rateMmH : null;
}
