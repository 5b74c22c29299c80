import { localDayOf } from '../format/times.ts';
import { selectNowMs, selectTimeZone } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';

let lastNowMs: number | undefined;
let lastZone: string | undefined;
let lastDay: string | undefined;

/** Each of a year's days asks for it with every message: it is worked out once for all of them. */
const selectToday = (state: LiveState): string | undefined => {
  const nowMs = selectNowMs(state);
  const timeZone = selectTimeZone(state);
  if (nowMs === lastNowMs && timeZone === lastZone) return lastDay;
  [lastNowMs, lastZone] = [nowMs, timeZone];
  lastDay = nowMs === undefined ? undefined : localDayOf(nowMs, timeZone);
  return lastDay;
};

/** The local day that the controller now writes; undefined while none is heard. */
export function useToday(): string | undefined {
  return useLive(selectToday);
}
