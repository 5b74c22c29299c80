import type { SunClock } from '../state.ts';

/** Calendars that are apart by less are taken to agree [ms]: half a degree of the sun's way. */
const alikeMs = 120_000;
/** For so long a calendar has to stand by its word before the sun follows it [ms]; a design choice. */
const provenMs = 3_600_000;

export const unknownSunClock: SunClock = { atMs: null, apartMs: null, apartSinceMs: 0 };

/**
 * Carries the instant by which the sun is judged. It runs on steady time, so that a calendar that steps to and
 * fro moves no sun; one that keeps to another time for an hour is believed, since it was set right.
 *
 * @param nowMs - What the calendar says; 0 for none.
 * @param passedMs - Steady time since the step before; null when nobody knows, and the calendar has to be believed.
 */
export function updateSunClock(
  before: SunClock,
  nowMs: number,
  passedMs: number | null,
  runMs: number,
): SunClock {
  if (nowMs <= 0) return before.atMs === null ? before : { ...before, atMs: before.atMs + (passedMs ?? 0) };
  if (passedMs === null || before.atMs === null) return { ...unknownSunClock, atMs: nowMs };
  const atMs = before.atMs + passedMs;
  const apartMs = nowMs - atMs;
  if (Math.abs(apartMs) < alikeMs) return { ...unknownSunClock, atMs };
  if (before.apartMs === null || Math.abs(apartMs - before.apartMs) >= alikeMs)
    return { atMs, apartMs, apartSinceMs: runMs };
  return runMs - before.apartSinceMs >= provenMs ? { ...unknownSunClock, atMs: nowMs } : { ...before, atMs };
}
