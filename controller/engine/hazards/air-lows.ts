import type { TrustedReadings } from '../../../shared-types/readings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { canEmpty } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { AirLows } from '../state.ts';
import { daysToFrostSeason, isInFrostSeason } from './frost-season.ts';

/** Days whose coldest air is kept. */
const daysKept = 7;
/** Frost is in season when the air was at this within the days kept [°C]; a design choice. */
const inSeasonC = 4;
/**
 * It is near when the air was at this [°C]: where autumn cools by a kelvin a week, four weeks ahead. A design
 * choice.
 */
const nearC = 8;
/** So long ahead is a season announced [d]. */
const aheadDays = 28;

/** True where the air of past nights has to stand in for a season: the pan cannot be emptied, and none is set. */
function needsLows(site: Site): boolean {
  return !canEmpty(site) && site.frostSeason === undefined;
}

/** Keeps the coldest air of each local day. */
export function updateAirLows(
  before: AirLows,
  { ambientC }: TrustedReadings,
  site: Site,
  newDay: boolean,
): AirLows {
  if (!needsLows(site)) return before;
  const day = newDay ? nextDay(before) : before;
  const airC = good(ambientC);
  if (airC === null || (day.todayC !== null && airC >= day.todayC)) return day;
  return { ...day, todayC: airC };
}

function nextDay({ todayC, daysC }: AirLows): AirLows {
  return { todayC: null, daysC: todayC === null ? daysC : [...daysC, todayC].slice(-daysKept) };
}

function lowestC({ todayC, daysC }: AirLows): number {
  return Math.min(todayC ?? Number.POSITIVE_INFINITY, ...daysC);
}

/** True for a pan that must not be filled now: it cannot be emptied, and frost is in season. */
export function isOutOfSeason({ state, site, localDay }: Situation): boolean {
  if (canEmpty(site)) return false;
  return needsLows(site) ? lowestC(state.airLows) <= inSeasonC : isInFrostSeason(site, localDay);
}

/** True when such a pan is to be emptied by hand: the season is no more than four weeks away, or there. */
export function isSeasonNear(situation: Situation): boolean {
  const { state, site, localDay } = situation;
  if (canEmpty(site)) return false;
  if (needsLows(site)) return lowestC(state.airLows) <= nearC;
  const days = daysToFrostSeason(site, localDay);
  return isOutOfSeason(situation) || (days !== null && days <= aheadDays);
}
