import { sunsetHourAngleDeg } from './solar-geometry.ts';

const radians = Math.PI / 180;

/** Solar constant of Duffie & Beckman [W/m2]. Later measurements say 1361; the check values hold to this. */
const solarConstantWM2 = 1367;

/**
 * Irradiance outside the air, square to the sun [W/m2], 1322 to 1413.
 *
 * @param dayOfYear - 1 to 366. Source: Duffie & Beckman equation 1.4.1a.
 */
export function extraterrestrialNormalWM2(dayOfYear: number): number {
  return solarConstantWM2 * (1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365));
}

/**
 * Mean extraterrestrial irradiance on the level between two hour angles [W/m2].
 *
 * @param fromDeg, toDeg - Hour angles, the first before the second, within -180 to 540; night between them
 * counts as dark.
 *
 * Source: the integrals of Duffie & Beckman equations 1.10.3 (a day, -180 to 180) and 1.10.4, cut at sunrise and
 * sunset.
 */
export function extraterrestrialMeanWM2(
  latitudeDeg: number,
  declinationDeg: number,
  dayOfYear: number,
  fromDeg: number,
  toDeg: number,
): number {
  const sunsetDeg = sunsetHourAngleDeg(latitudeDeg, declinationDeg);
  const even = Math.sin(latitudeDeg * radians) * Math.sin(declinationDeg * radians);
  const swing = Math.cos(latitudeDeg * radians) * Math.cos(declinationDeg * radians);
  // The span may reach into the day after or the day before.
  let sum = 0;
  for (const noonDeg of [-360, 0, 360]) {
    const first = Math.max(fromDeg, noonDeg - sunsetDeg);
    const last = Math.min(toDeg, noonDeg + sunsetDeg);
    if (last <= first) continue;
    sum += even * (last - first) * radians;
    sum += swing * (Math.sin((last - noonDeg) * radians) - Math.sin((first - noonDeg) * radians));
  }
  const mean = sum / ((toDeg - fromDeg) * radians);
  return Math.max(0, mean) * extraterrestrialNormalWM2(dayOfYear);
}
