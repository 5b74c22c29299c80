import { localDayOf } from '../format/times.ts';
import { selectNowMs, selectTimeZone } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';

const selectToday = (state: LiveState): string | undefined => {
  const nowMs = selectNowMs(state);
  return nowMs === undefined ? undefined : localDayOf(nowMs, selectTimeZone(state));
};

/** The local day that the controller now writes; undefined while none is heard. */
export function useToday(): string | undefined {
  return useLive(selectToday);
}
