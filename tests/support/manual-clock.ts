import type { Clock } from '../../controller/clock.ts';

export interface ManualClock extends Clock {
  advance(durationMs: number): void;
}

/** A clock that stands still until it is told; calendar and steady time go together. */
export function manualClock(startMs = Date.UTC(2031, 5, 21, 12)): ManualClock {
  let nowMs = startMs;
  return {
    speed: 1,
    simulated: false,
    nowMs: () => nowMs,
    steadyMs: () => nowMs - startMs,
    advance: (durationMs) => {
      nowMs += durationMs;
    },
  };
}
