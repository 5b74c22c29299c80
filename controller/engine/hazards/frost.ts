import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { heldFor, hold } from '../blocks/hold.ts';
import type { Facts } from '../sense/facts.ts';
import type { EngineState } from '../state.ts';

type Frost = EngineState['frost'];

/** A frost once measured ends this far above the frost temperature [K]; a design choice. */
const frostEndsK = 1;

/** Brings the memory of frost up to this step: measured and blind frost stay until the release held. */
export function updateFrost(before: Frost, facts: Facts, settings: Settings, runMs: number): Frost {
  const now = frostNow(facts, settings);
  if (now !== null) return { ...before, latched: now, warmMs: null };
  if (before.latched === null) return before;
  const { coldestPanC, panIsGood } = facts;
  const warm = coldestPanC !== null && panIsGood && coldestPanC >= settings.frostReleaseC;
  const warmMs = hold(before.warmMs, warm, runMs);
  const released = heldFor(warmMs, runMs, settings.frostReleaseMin * 60_000);
  return released ? { ...before, latched: null, warmMs: null } : { ...before, warmMs };
}

function frostNow({ coldestPanC, ambientC }: Facts, settings: Settings): Frost['latched'] {
  if (coldestPanC !== null) return coldestPanC <= settings.frostTemperatureC ? 'frost-measured' : null;
  return ambientC !== null && ambientC <= settings.blindFrostAmbientC ? 'frost-blind' : null;
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

/**
 * True when frost is possible on that day; without a season, or without a day, always.
 *
 * @param localDay - Day of the site such as 2031-06-21; both ends of the season belong to it.
 */
function isInFrostSeason({ frostSeason }: Site, localDay: string | null): boolean {
  if (frostSeason === undefined || localDay === null) return true;
  const { from, to } = frostSeason;
  const day = localDay.slice(5);
  return from <= to ? day >= from && day <= to : day >= from || day <= to;
}
