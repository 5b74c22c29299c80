import type { Clock } from '../clock.ts';

export interface BeatOptions {
  readonly clock: Clock;
  /** Time between two steps [ms of the clock]. */
  readonly stepMs: number;
  /** Time since the newest reading arrived [ms of the clock]; infinite before the first. */
  readonly newestAgeMs: () => number;
  readonly beat: () => void;
}

export interface Beat {
  /** Brings the next step forward: somebody waits for it. */
  soon(): void;
  stop(): void;
}

/** From a reading that shows a hazard to the response no more than this may pass [ms]. */
const mostStepMs = 10_000;
/** Share of a step by which one may come early, or late, to meet the readings. */
const earlyShare = 0.1;
const lateShare = 0.25;
/** Longest wall time between two looks at what was heard [ms]; what comes in several messages is let in. */
const longestLookMs = 8;
const looksPerStep = 50;
/** Looks that must fit into the wait for readings, or a beat does not wait: the clock runs too fast. */
const leastLooks = 4;
/** Least wall time between steps that somebody asked for [ms]. */
const soonestMs = 50;

/**
 * Calls `beat` every `stepMs`, in step with the device while it speaks.
 *
 * Without readings the beats stand on a fixed grid, so that no delay adds up; missed beats are skipped.
 * With readings a beat may come a tenth of a step early or wait a quarter of one, to follow the next
 * readings at once and judge them while they are fresh; no wait makes a step longer than ten seconds.
 */
export function startBeat({ clock, stepMs, newestAgeMs, beat }: BeatOptions): Beat {
  const lookMs = Math.max(1, Math.min(longestLookMs, stepMs / clock.speed / looksPerStep));
  const follows = (lateShare * stepMs) / clock.speed >= leastLooks * lookMs;
  const earlyMs = follows ? earlyShare * stepMs : 0;
  const lateMs = follows ? Math.max(0, Math.min(lateShare * stepMs, mostStepMs - stepMs)) : 0;
  let dueMs = clock.steadyMs();
  let lastBeatMs = Number.NEGATIVE_INFINITY;
  let lastBeatWallMs = Number.NEGATIVE_INFINITY;
  let inStep = false;
  let soonFromMs: number | undefined;
  let timer: NodeJS.Timeout | undefined;

  function nextDue(nowMs: number, fromHere: boolean): number {
    if (fromHere || nowMs > dueMs + stepMs) return nowMs + stepMs;
    return dueMs + stepMs;
  }

  function run(nowMs: number, nextMs: number): void {
    dueMs = nextMs;
    soonFromMs = undefined;
    lastBeatMs = nowMs;
    lastBeatWallMs = performance.now();
    beat();
  }

  /** A look within the time in which a beat may come: now, or when readings have come, or at its end. */
  function lookForReadings(nowMs: number): void {
    const ageMs = follows ? newestAgeMs() : Number.POSITIVE_INFINITY;
    const speaks = nowMs - ageMs > lastBeatMs;
    const arrivedNow = nowMs - ageMs >= dueMs - earlyMs;
    // Readings may come in several messages: the last one is a look old before they count.
    if (arrivedNow && ageMs >= lookMs * clock.speed) {
      inStep = true;
      run(nowMs, nextDue(nowMs, true));
    } else if (nowMs >= dueMs + (inStep || speaks ? lateMs : 0)) {
      inStep = false;
      run(nowMs, nextDue(nowMs, speaks));
    }
  }

  function look(): void {
    const nowMs = clock.steadyMs();
    const isNearDue = nowMs >= dueMs - earlyMs;
    if (soonFromMs !== undefined && performance.now() >= soonFromMs)
      run(nowMs, isNearDue ? nextDue(nowMs, false) : dueMs);
    else if (isNearDue) lookForReadings(nowMs);
    plan();
  }

  function plan(): void {
    const untilWindowMs = (dueMs - earlyMs - clock.steadyMs()) / clock.speed;
    const untilSoonMs = soonFromMs === undefined ? Number.POSITIVE_INFINITY : soonFromMs - performance.now();
    clearTimeout(timer);
    timer = setTimeout(look, Math.max(lookMs, Math.min(untilWindowMs, untilSoonMs)));
  }

  plan();
  return {
    soon() {
      if (soonFromMs !== undefined) return;
      soonFromMs = Math.max(performance.now(), lastBeatWallMs + soonestMs);
      plan();
    },
    stop: () => clearTimeout(timer),
  };
}
