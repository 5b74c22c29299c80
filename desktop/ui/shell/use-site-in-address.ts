import { useLayoutEffect } from 'react';
import { selectSiteName, selectSiteNames } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { useFeed } from './feed-context.ts';
import { siteOf, withSite } from './site-address.ts';
import { useHash } from './use-route.ts';

const selectSeveral = (state: LiveState): boolean => selectSiteNames(state).length > 1;

/**
 * Where there are several sites, the address names the one that is shown, so that a reload, a bookmark
 * and a second tab show the same. What the address names is shown; a link that names none stays at its site.
 */
export function useSiteInAddress(): void {
  const feed = useFeed();
  const hash = useHash();
  const shown = useLive(selectSiteName);
  const several = useLive(selectSeveral);
  useLayoutEffect(() => {
    const named = siteOf(hash);
    if (named !== null) feed.choose(named);
    else if (shown !== null && several) history.replaceState(null, '', withSite(hash, shown));
  }, [feed, hash, shown, several]);
}
