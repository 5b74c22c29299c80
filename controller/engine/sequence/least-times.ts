import type { Command, Situation } from '../situation.ts';
import { type Cause, startUp } from '../state.ts';

const hourMs = 3_600_000;

/** Starts of the pump that count against its limit. */
export function recentStarts(startsMs: readonly number[], runMs: number): readonly number[] {
  return startsMs.filter((startMs) => runMs - startMs < hourMs);
}

/** Why the pump may not start yet; null when it may. Protections do not wait. */
export function startBlock(
  { state: { pump }, settings, runMs, elapsedMs }: Situation,
  { urgent }: Command,
): Cause | null {
  if (urgent) return null;
  // After time that nobody saw, the first look begins nothing.
  if (elapsedMs === 0) return startUp;
  const offS = (runMs - pump.sinceMs) / 1000;
  const { leastOffS, startsPerHour } = settings;
  if (offS < leastOffS) return { code: 'waiting-least-off', values: { offS, leastOffS } };
  const starts = recentStarts(pump.startsMs, runMs).length;
  return starts < startsPerHour
    ? null
    : { code: 'waiting-starts-per-hour', values: { starts, startsPerHour } };
}

/** Why the pump may not stop yet; null when it may. Protections do not wait. */
export function stopBlock(
  { state: { pump }, settings, runMs }: Situation,
  { urgent }: Command,
): Cause | null {
  const leftS = settings.leastOnS - (runMs - pump.sinceMs) / 1000;
  return urgent || leftS <= 0 ? null : { code: 'circulating-least-on', values: { leftS } };
}
