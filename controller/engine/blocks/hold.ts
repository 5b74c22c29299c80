/**
 * Instant since which a condition holds without a break [steady ms]; null while it does not hold.
 *
 * @param sinceMs - What this function returned at the step before.
 * @param nowMs - Steady time of this step, or an earlier instant from which the condition counts.
 */
export function hold(sinceMs: number | null, condition: boolean, nowMs: number): number | null {
  return condition ? (sinceMs ?? nowMs) : null;
}

/** True when what `hold` returned has held for `durationMs`; a duration of 0 holds at once. */
export function heldFor(sinceMs: number | null, nowMs: number, durationMs: number): boolean {
  return sinceMs !== null && nowMs - sinceMs >= durationMs;
}
