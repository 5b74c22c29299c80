import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { hysteresis } from '../blocks/hysteresis.ts';
import type { Facts } from '../sense/facts.ts';
import type { EngineState } from '../state.ts';

type Heat = EngineState['heat'];

/** The liner counts as hot until it is this much below where it became so [K]; a design choice. */
const linerReleaseK = 3;

/** Store temperature at which harvest ends [°C]. */
export function storeLimitC(site: Site, settings: Settings): number {
  return Math.min(settings.storeLimitC, site.store.maximumC);
}

/** Sheet or pan temperature at which the liner counts as too hot [°C]. */
export function linerHotC(site: Site, settings: Settings): number {
  return site.pan.linerLimitC - settings.linerMarginK;
}

/** Brings the memory of heat up to this step; what cannot be read stays as it was. */
export function updateHeat(before: Heat, facts: Facts, site: Site, settings: Settings): Heat {
  const limitC = storeLimitC(site, settings);
  const linerC = linerHotC(site, settings);
  const { hottestStoreC, hottestPanC } = facts;
  const storeFull =
    hottestStoreC === null
      ? before.storeFull
      : hysteresis(before.storeFull, hottestStoreC, limitC, limitC - settings.storeReleaseK);
  const linerHot =
    hottestPanC === null
      ? before.linerHot
      : hysteresis(before.linerHot, hottestPanC, linerC, linerC - linerReleaseK);
  return storeFull === before.storeFull && linerHot === before.linerHot ? before : { storeFull, linerHot };
}
