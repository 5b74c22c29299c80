import { type DayCharacter, type DayPlan, dayPlans } from './day-kinds.ts';
import { smoothStep } from './random.ts';

/** A day's plan with its mean air temperature in place of its distance from the season's. */
export interface DayCourse {
  readonly start: DayCharacter;
  readonly end: DayCharacter;
  readonly turn: DayPlan['turn'];
}

/** @param seasonC - Mean air temperature of that very day before its kind is looked at [°C]. */
export function courseOf(kind: keyof typeof dayPlans, seasonC: number): DayCourse {
  const { start, turn, meanAtMostC = Number.POSITIVE_INFINITY } = dayPlans[kind];
  const startC = Math.min(meanAtMostC, seasonC + start.warmerK);
  const placed = { ...start, warmerK: startC };
  if (turn === undefined) return { start: placed, end: placed, turn };
  // What comes after the turn keeps its distance from what was before it.
  const end = { ...turn.into, warmerK: startC + turn.into.warmerK - start.warmerK };
  return { start: placed, end, turn };
}

/** The weather's character along the days, joined over four hours around midnight, so that nothing jumps. */
export function createCourse(
  dayCourse: (day: number) => DayCourse,
): (day: number, solarHour: number) => DayCharacter {
  let kept: { day: number; before: DayCourse; today: DayCourse; after: DayCourse } | undefined;
  return (day, solarHour) => {
    if (kept?.day !== day)
      kept = { day, before: dayCourse(day - 1), today: dayCourse(day), after: dayCourse(day + 1) };
    const { before, today, after } = kept;
    if (solarHour < 2) return between(before.end, today.start, smoothStep((solarHour + 2) / 4));
    if (solarHour > 22) return between(today.end, after.start, smoothStep((solarHour - 22) / 4));
    if (today.turn === undefined) return today.start;
    const { solarHour: turnHour, takesH } = today.turn;
    return between(today.start, today.end, smoothStep((solarHour - turnHour) / takesH + 0.5));
  };
}

function between(a: DayCharacter, b: DayCharacter, share: number): DayCharacter {
  if (share <= 0) return a;
  if (share >= 1) return b;
  const mix = (from: number, to: number) => from + (to - from) * share;
  return {
    clearnessFraction: mix(a.clearnessFraction, b.clearnessFraction),
    throughCloudFraction: mix(a.throughCloudFraction, b.throughCloudFraction),
    cloudFraction: mix(a.cloudFraction, b.cloudFraction),
    warmerK: mix(a.warmerK, b.warmerK),
    swingK: mix(a.swingK, b.swingK),
    drynessK: mix(a.drynessK, b.drynessK),
    windMs: mix(a.windMs, b.windMs),
    showerMmH: mix(a.showerMmH, b.showerMmH),
  };
}
