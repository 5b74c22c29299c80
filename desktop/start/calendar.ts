import type { ClockAnchor } from '../../controller/clock.ts';

/** A morning in June of an invented year, when the pan is about to be filled. */
export const firstInstantMs = Date.UTC(2031, 5, 21, 8, 30);

/** Whole local days that a first start records before its own [d]. */
const daysBefore = 3;
const dayMs = 86_400_000;

/** Midnight of the site's calendar, three days before the day of `instantMs` [UTC ms]. */
export function historyStartMs(instantMs: number, timeZone: string): number {
  const earlierMs = instantMs - daysBefore * dayMs;
  return earlierMs - sinceMidnightMs(earlierMs, timeZone);
}

/** Time that a wall clock of the zone shows [ms]. A clock change within the day shifts it by as much. */
function sinceMidnightMs(instantMs: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', { timeZone, timeStyle: 'medium' }).format(instantMs);
  const [hours = 0, minutes = 0, seconds = 0] = parts.split(':').map(Number);
  return ((hours * 60 + minutes) * 60 + seconds) * 1000;
}

export type AnchorChoice =
  | { readonly ok: true; readonly anchor: ClockAnchor }
  | { readonly ok: false; readonly reason: string };

interface AnchorQuestion {
  /** Newest instant of the log [UTC ms]; null when there is none. */
  readonly newestMs: number | null;
  /** Instant that was asked for [UTC ms]. */
  readonly fromMs: number | undefined;
  /** Where a new log begins [UTC ms]. */
  readonly firstMs: number;
  readonly stepMs: number;
  readonly wallMs: number;
  readonly speed: number;
}

/** The clock of controller and device: it goes on where the log stopped, and never back. */
export function chooseAnchor(question: AnchorQuestion): AnchorChoice {
  const { newestMs, fromMs, firstMs, stepMs, wallMs, speed } = question;
  const earliestMs = newestMs === null ? undefined : newestMs + stepMs;
  if (fromMs !== undefined && earliestMs !== undefined && fromMs < earliestMs) {
    const until = new Date(earliestMs).toISOString();
    return {
      ok: false,
      reason: `the log reaches until ${until}; --from cannot lie before, or take another --data`,
    };
  }
  const showsMs = fromMs ?? earliestMs ?? firstMs;
  return { ok: true, anchor: { showsMs, atWallMs: wallMs, speed } };
}

/**
 * Wall time that controller and device get to come up [whole ms]. Both load about as much as the process that starts them,
 * one after the other; on a busy machine a fixed time would be too short, and the first thing to see a false alarm.
 * Least, most and factor are design choices.
 *
 * @param loadedMs - Age of this process when all that it loads was there [ms].
 */
export const comingUpMs = (loadedMs: number): number =>
  Math.round(Math.min(20_000, Math.max(3000, 5 * loadedMs)));
