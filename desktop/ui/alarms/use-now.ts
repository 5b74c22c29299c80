import { selectNowMs } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';

const minuteMs = 60_000;

const selectMinuteMs = (state: LiveState): number =>
  Math.floor((selectNowMs(state) ?? 0) / minuteMs) * minuteMs;

/** The controller's calendar to the minute [UTC ms], so that what shows it is drawn once a minute. */
export const useMinute = (): number => useLive(selectMinuteMs);
