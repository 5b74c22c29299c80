import { useEffect } from 'react';
import { useFeed } from '../shell/feed-context.ts';
import { selectAlarms, selectDoor } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';

/** What stands, as one word: it changes with everything that the log notes of alarms. */
const selectStands = (state: LiveState): string =>
  selectAlarms(state)
    .map(({ code, state: alarmState, active, sinceMs }) => `${code} ${alarmState} ${active} ${sinceMs}`)
    .join();

/** Asks for what happened to alarms, and again whenever something happens. @returns a way to ask again. */
export function useAlarmEvents(site: string | null): () => void {
  const feed = useFeed();
  const door = useLive(selectDoor);
  const stands = useLive(selectStands);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of what stands is a reason to ask again
  useEffect(() => {
    if (site !== null && door === 'open') void feed.loadAlarmEvents(site);
  }, [feed, door, site, stands]);
  return () => {
    if (site !== null) void feed.loadAlarmEvents(site);
  };
}
