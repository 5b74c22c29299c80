import { useCallback } from 'react';
import { selectSiteName, selectSiteNames } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { formatRoute, type Route } from './route.ts';

/** The site for an address; null where there is no other. */
const selectSite = (state: LiveState): string | null =>
  selectSiteNames(state).length > 1 ? selectSiteName(state) : null;

/** Addresses for links: of the site that is shown, so that a second tab shows it as well. */
export function useAddress(): (route: Route) => string {
  const site = useLive(selectSite);
  return useCallback((route) => formatRoute(route, site), [site]);
}
