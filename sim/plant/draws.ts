/** Who draws hot water, and so when. Hours and shares are invented habits. */
export const drawProfiles = ['wash-house', 'nursery', 'hatchery', 'none'] as const;
export type DrawProfile = (typeof drawProfiles)[number];

/**
 * Share of the day's hot water that is wanted in an hour [1/h].
 *
 * @param solarHour - Hours after solar midnight, 0 to 24. @returns 0 and more; 1 in sum over a day, or
 * nothing at all where nothing is drawn.
 */
export function drawnShareH(profile: DrawProfile, solarHour: number): number {
  switch (profile) {
    case 'wash-house':
      return washHouseShareH(solarHour);
    case 'nursery':
      // Watering as long as there is light.
      return solarHour >= 6 && solarHour < 18 ? 1 / 12 : 0;
    case 'hatchery':
      return 1 / 24;
    case 'none':
      return 0;
  }
}

/** Three in ten in the morning, a little at noon, the rest in the evening. */
function washHouseShareH(solarHour: number): number {
  if (solarHour >= 7 && solarHour < 8) return 0.3;
  if (solarHour >= 12 && solarHour < 13) return 0.15;
  if (solarHour >= 18.5 && solarHour < 20.5) return 0.275;
  return 0;
}

/** Hot water wanted at the tap in equal stretches of time, in place of a habit. Plain data. */
export interface DrawCourse {
  readonly fromMs: number;
  readonly stepMs: number;
  /** In each stretch [kg/s]; nothing is wanted before and after them. */
  readonly wantedKgS: readonly number[];
}

/** @param atMs - An instant belongs to the stretch that it ends or lies in. @returns water wanted at the tap [kg/s]. */
export function wantedKgS({ fromMs, stepMs, wantedKgS: wanted }: DrawCourse, atMs: number): number {
  return wanted[Math.ceil((atMs - fromMs) / stepMs) - 1] ?? 0;
}
