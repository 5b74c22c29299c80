import { useEffect } from 'react';
import { useOlderFit } from '../replay/fit/use-older-fit.ts';
import { useFeed } from '../shell/feed-context.ts';
import { selectDoor } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import type { PanCheckRun } from '../store/tuning-store.ts';

/** Asks which fit is kept. @returns whether an answer rests on another one. */
export function useKeptFit(site: string, run: PanCheckRun | null): boolean {
  const feed = useFeed();
  const open = useLive(selectDoor) === 'open';
  useEffect(() => {
    if (open) void feed.loadKeptFit(site);
  }, [feed, site, open]);
  return useOlderFit(site, run);
}
