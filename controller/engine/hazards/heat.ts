import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { hysteresis } from '../blocks/hysteresis.ts';
import { isSunDown } from '../daylight.ts';
import { canRest, panVolumeL } from '../pan.ts';
import type { Goal, Situation } from '../situation.ts';
import { mayStandDry } from '../stagnation.ts';
import type { EngineState } from '../state.ts';
import { clearSkyWM2 } from '../sun/position.ts';
import { isLosing } from '../want/timers.ts';
import { updateDump } from './heat-dump.ts';
import { isCooling } from './night-cooling.ts';

type Heat = EngineState['heat'];

/** From this on the water of the store scalds [°C]. */
export const scaldC = 60;
/** The liner counts as hot until it is this much below where it became so [K]; a design choice. */
const linerReleaseK = 3;
/**
 * What a pump still brings once its sensor shows it: the flow of two minutes, into that part of the store
 * whose temperature the sensor shows. Design choices.
 */
const lateMin = 2;
const sensedParts = 6;
/** By how much a sheet is taken to get more than a clear sky gives: the bright edges of clouds. A design choice. */
const brighter = 1.5;

/** Store temperature at which harvest ends [°C]. */
export function storeLimitC(site: Site, settings: Settings): number {
  return Math.min(settings.storeLimitC, site.store.maximumC);
}

/** Sheet or pan temperature at which the liner counts as too hot [°C]. */
export function linerHotC(site: Site, settings: Settings): number {
  return site.pan.linerLimitC - settings.linerMarginK;
}

/**
 * Share of the excess of the returning water over the store by which its hottest part may yet warm once the
 * pump is stopped, 0 to 1.
 *
 * A pan that empties into the store with the stop of its pump brings all its water home.
 */
export function comesHomeFraction(site: Site): number {
  const { pump, store, plumbing } = site;
  const lateL = lateMin * pump.ratedFlowLMin * sensedParts;
  const homeL = plumbing === 'open-store' && !canRest(site) ? panVolumeL(site) : 0;
  return Math.min(1, Math.max(lateL, homeL) / store.volumeL);
}

/**
 * The hottest that the store becomes if the pump stops now [°C]; null when it cannot be read. Where nothing tells
 * of its top, that is taken to be as hot as what returns to it.
 */
function storeToBeC({ state, facts, readings, site }: Situation): number | null {
  const { hottestStoreC, panC } = facts;
  if (hottestStoreC === null || panC === null || state.water.level !== 'full') return hottestStoreC;
  const top = readings.storeTopC;
  const fraction = top === undefined || top.quality === 'failed' ? 1 : comesHomeFraction(site);
  return hottestStoreC + fraction * Math.max(0, panC - hottestStoreC);
}

/** Brings the memory of heat up to this step; what cannot be read stays as it was. */
export function updateHeat(situation: Situation): Heat {
  const { facts, site, settings, state } = situation;
  const before = state.heat;
  const limitC = storeLimitC(site, settings);
  const linerC = linerHotC(site, settings);
  const { hottestPanC } = facts;
  const toBeC = storeToBeC(situation);
  const storeFull = stays(before.storeFull, toBeC, limitC, coolsByK(situation));
  const linerHot = stays(before.linerHot, hottestPanC, linerC, linerReleaseK);
  const cooling = isCooling(situation);
  const dump = updateDump(before, { linerC, storeC: limitC, storeFull }, situation);
  const same = storeFull === before.storeFull && linerHot === before.linerHot && cooling === before.cooling;
  if (same && dump === before.dump) return before;
  return dump === undefined ? { storeFull, linerHot, cooling } : { storeFull, linerHot, cooling, dump };
}

/**
 * How far the store has to cool before it takes heat again [K]. A liner that no dry sheet may heat is not kept waiting
 * for its water until then: it is filled as soon as there is room for any heat, unless the last fill failed.
 */
function coolsByK({ state: { failure, water }, site, settings }: Situation): number {
  const hurries = water.level === 'empty' && failure.count === 0 && !mayStandDry(site);
  return hurries ? 0 : settings.storeReleaseK;
}

function stays(before: boolean, valueC: number | null, onAtC: number, releaseK: number): boolean {
  return valueC === null ? before : hysteresis(before, valueC, onAtC, onAtC - releaseK);
}

/**
 * What becomes of the pan while the store takes no more: it rests until it loses heat, or empties before where that
 * is set. A pan that is left full through the evening gives to the night what was the store's, unless that is what it
 * is to do.
 *
 * Its water comes home only when it is no warmer than the store's hottest, and the sheet is left dry only where the
 * liner stands what it may yet reach: from noon on no more than under half again as much as a clear sky gives now.
 */
export function fullStoreGoal(situation: Situation): Goal {
  const { facts, site, settings, state, sunHeightDeg } = situation;
  if (settings.emptyWhenStoreFull !== 1 && (settings.nightCooling === 1 || !isLosing(situation)))
    return 'rest';
  const { hottestPanC, hottestStoreC } = facts;
  const known = hottestPanC !== null && hottestStoreC !== null;
  if (site.plumbing === 'open-store' && !(known && hottestPanC <= hottestStoreC)) return 'rest';
  const falls = sunHeightDeg !== null && state.harvest.risingWM2 < 0;
  const stands = mayStandDry(site, falls ? brighter * clearSkyWM2(sunHeightDeg) : undefined);
  return stands || isSunDown(situation) ? 'empty' : 'rest';
}
