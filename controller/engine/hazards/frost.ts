import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { heldFor, hold } from '../blocks/hold.ts';
import { hysteresis } from '../blocks/hysteresis.ts';
import { isDaylight } from '../daylight.ts';
import type { Facts } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';
import { frostNightC } from './frost-night.ts';
import { isInFrostSeason } from './frost-season.ts';
import { fallToFrost, updateFall } from './frost-trend.ts';

type Frost = EngineState['frost'];

/** A frost once measured ends this far above the frost temperature [K]; a design choice. */
const frostEndsK = 1;

/**
 * Brings the memory of frost up to this step. A frost measured, coming or blind stays until the release has held
 * by day, with no night of frost in sight.
 */
export function updateFrost(situation: Situation): Frost {
  const { settings, runMs } = situation;
  const seen = look(situation);
  const now = frostNow(situation, seen);
  if (now !== null) return { ...seen, latched: now, warmMs: null };
  if (seen.latched === null) return seen;
  const warmMs = hold(seen.warmMs, isWarm(situation, seen), runMs);
  const released = heldFor(warmMs, runMs, settings.frostReleaseMin * 60_000);
  return released ? { ...seen, latched: null, warmMs: null } : { ...seen, warmMs };
}

function look(situation: Situation): Frost {
  const { facts, settings, state } = situation;
  const before = state.frost;
  const nightC = frostNightC(situation, before.nightC);
  const storeCold = isStoreCold(before.storeCold, facts, settings);
  const fall = updateFall(before.fall, situation);
  const same = nightC === before.nightC && storeCold === before.storeCold && fall === before.fall;
  return same ? before : { ...before, nightC, storeCold, fall };
}

function isWarm(situation: Situation, { nightC }: Frost): boolean {
  const { facts, settings } = situation;
  // Known where a pan sensor is good.
  const coldestPanC = facts.coldestPanC as number;
  const warm = facts.panIsGood && coldestPanC >= settings.frostReleaseC;
  return warm && nightC === null && isDaylight(situation);
}

function frostNow(situation: Situation, { latched, fall }: Frost): Frost['latched'] {
  const { facts, settings } = situation;
  const { coldestPanC, ambientC } = facts;
  if (coldestPanC !== null) {
    if (coldestPanC <= settings.frostTemperatureC) return 'frost-measured';
    // A frost that was measured stays one, or the pan would no longer be kept warm.
    return fallToFrost(situation, fall) === null ? null : (latched ?? 'frost-trend');
  }
  return ambientC !== null && ambientC <= settings.blindFrostAmbientC ? 'frost-blind' : null;
}

/** True while the store bottom is at frost, or not yet clear of it; what cannot be read stays as it was. */
function isStoreCold(before: boolean, { storeBottomC }: Facts, { frostTemperatureC }: Settings): boolean {
  if (storeBottomC === null) return before;
  return hysteresis(before, -storeBottomC, -frostTemperatureC, -frostTemperatureC - frostEndsK);
}

/** True while the pan is measured to be at frost, or not yet clear of it. */
export function isFrostMeasured(frost: Frost, { coldestPanC }: Facts, settings: Settings): boolean {
  return (
    frost.latched === 'frost-measured' &&
    coldestPanC !== null &&
    coldestPanC <= settings.frostTemperatureC + frostEndsK
  );
}

export function isFrostBlind(frost: Frost, { coldestPanC, ambientC }: Facts, settings: Settings): boolean {
  return (
    frost.latched === 'frost-blind' &&
    coldestPanC === null &&
    ambientC !== null &&
    ambientC <= settings.blindFrostAmbientC
  );
}

/** True when neither pan nor air can be read and the calendar does not exclude frost. */
export function isFrostUnseen(facts: Facts, site: Site, localDay: string | null): boolean {
  return facts.coldestPanC === null && facts.ambientC === null && isInFrostSeason(site, localDay);
}
