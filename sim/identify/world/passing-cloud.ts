import { filled, smoothed } from './mending.ts';
import type { SkyColumns } from './sky-columns.ts';

/** How much of a passing cloud's long-wave light is there: half, and half wrong. Design choices. */
export const passingShare = { mean: 0.5, sd: 0.5 } as const;

/** Half an hour to both sides, and half a day to both sides [min]. Design choices. */
const reach = { passing: 30, lasting: 720 } as const;
/** With the sun lower than this its clearness says little of the sky [deg]. */
const lowSunDeg = 80;
/** What a closed sky sends down more than a clear one, about [W/m2]. */
const closedWM2 = 75;

/**
 * Long-wave light of clouds that come and go within a day, if the sky were closed just as the sun is dimmed [W/m2]: that
 * of the hour less that of the half day, for each minute. In the dark a sky is between that of the evening and that of
 * the morning: clouds do not leave with the sun.
 *
 * Cloud by clearness: none at 0.7, closed at 0.2 and below; a design choice.
 */
export function passingCloudWM2({ irradianceWM2, sun }: SkyColumns): Float64Array {
  const cloudOver = (minutes: number) => {
    const got = smoothed(irradianceWM2, minutes);
    const possible = smoothed(sun.spaceWM2, minutes);
    return got.map((mean, i) => {
      const clearness = mean / Math.max(1, possible[i] as number);
      return Math.min(1, Math.max(0, (0.7 - clearness) / 0.5));
    });
  };
  const lasting = cloudOver(reach.lasting);
  const seen = cloudOver(reach.passing).map((cloud, i) =>
    (sun.zenithDeg[i] as number) > lowSunDeg ? Number.NaN : cloud,
  );
  const passing = filled(seen) ?? lasting;
  return passing.map((cloud, i) => closedWM2 * (cloud - (lasting[i] as number)));
}
