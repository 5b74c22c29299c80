import { useMemo } from 'react';
import type { Channel } from '../../../shared-types/channels.ts';
import { useNumbers } from '../shell/use-formats.ts';
import { selectReadingFreshForMs } from '../store/decision-selectors.ts';
import { selectLagMs, selectReading } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { type ReadingView, viewReading } from './reading-view.ts';

/** A channel's newest reading as it is shown; undefined when the site has no such sensor. */
export function useReadingView(channel: Channel): ReadingView | undefined {
  const reading = useLive(selectReading(channel));
  const lagMs = useLive(selectLagMs);
  const freshForMs = useLive(selectReadingFreshForMs);
  const numbers = useNumbers();
  return useMemo(
    () => (reading === undefined ? undefined : viewReading(channel, reading, numbers, { lagMs, freshForMs })),
    [channel, reading, numbers, lagMs, freshForMs],
  );
}
