import { useEffect } from 'react';
import { useFeed } from '../shell/feed-context.ts';
import { selectDoor } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';

/** Asks for the days of a site on entering, and again when the monitor comes back. */
export function useDays(site: string | null): void {
  const feed = useFeed();
  const door = useLive(selectDoor);
  useEffect(() => {
    if (site !== null && door === 'open') void feed.loadDays(site);
  }, [feed, door, site]);
}

/** Asks for a day's curves once they are wanted. @returns a way to ask again. */
export function useDayCurves(site: string, day: string): () => void {
  const feed = useFeed();
  const door = useLive(selectDoor);
  useEffect(() => {
    if (door === 'open') void feed.loadDay(site, day);
  }, [feed, door, site, day]);
  return () => void feed.loadDay(site, day);
}
