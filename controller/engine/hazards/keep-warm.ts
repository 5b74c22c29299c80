import { canEmpty } from '../pan.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';

/** Keeping warm begins when the store is this much warmer than the pan [K]; a design choice. */
const beginsK = 2;
/** It ends when the store is no more than this warmer [K]; a design choice. */
const endsK = 1;
/**
 * It begins only with a store this far above the frost temperature [K], where the pan cannot be emptied
 * and where it was to be; design choices. The cold water that comes back would else end it at once.
 */
const heldMarginK = 1;
const overdueMarginK = 4;

/** Brings the memory of keeping warm up to this step. */
export function updateKeepWarm(situation: Situation, frost: EngineState['frost']): EngineState['frost'] {
  const keepWarmMs = keepWarmSince(situation, frost);
  return keepWarmMs === frost.keepWarmMs ? frost : { ...frost, keepWarmMs };
}

/**
 * Instant since which the pan is kept warm from the store [steady ms]; null: it is not.
 *
 * The last resort against a measured frost, for a pan that cannot be emptied or does not empty. It
 * lasts the pump's least time, then until the pan is at the frost release or as warm as the store.
 */
function keepWarmSince(situation: Situation, frost: EngineState['frost']): number | null {
  const { facts, settings, runMs } = situation;
  const { keepWarmMs, latched } = frost;
  const { coldestPanC, storeBottomC } = facts;
  if (latched !== 'frost-measured' || coldestPanC === null || !isPossible(situation)) return null;
  const aheadK = storeBottomC === null ? Number.POSITIVE_INFINITY : storeBottomC - coldestPanC;
  if (keepWarmMs === null) {
    const begins = coldestPanC <= settings.frostTemperatureC && aheadK > beginsK;
    return begins && isProvenHeld(situation) ? runMs : null;
  }
  const ended = coldestPanC >= settings.frostReleaseC || aheadK <= endsK;
  return ended && runMs - keepWarmMs >= settings.leastOnS * 1000 ? null : keepWarmMs;
}

function isPossible({ state, facts, site, settings, drainSays }: Situation): boolean {
  const { storeBottomC } = facts;
  const { water, frost } = state;
  const held = !canEmpty(site);
  const marginK = frost.keepWarmMs !== null ? 0 : held ? heldMarginK : overdueMarginK;
  const storeWarms = storeBottomC !== null && storeBottomC > settings.frostTemperatureC + marginK;
  if (held) return water.level !== 'empty' && (storeBottomC === null || storeWarms);
  return storeWarms && facts.panC !== null && water.overdue && water.level === 'full' && drainSays !== true;
}

/** True when the drain had its chance, and it is measured that the water stays. */
function isProvenHeld({ state: { water }, facts, site, drainSays }: Situation): boolean {
  return !canEmpty(site) || (water.emptyingMs > 0 && (facts.levelMm !== null || drainSays === false));
}
