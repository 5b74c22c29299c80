import type { Site } from '../../../shared-types/site.ts';

type Location = Site['location'];

const dayMs = 86_400_000;
const radians = Math.PI / 180;
/** Thresholds on the sun's height are met alike by every JavaScript engine when it is rounded to this [deg]. */
const stepDeg = 0.1;
const stepWM2 = 0.01;

/**
 * Height of the sun's middle above the horizon [deg], rounded to 0.1; refraction is left out.
 *
 * @param utcMs - Instant.
 *
 * Error: below 0.3 deg against the solar position algorithm of NREL without refraction (tests/reference);
 * refraction lifts a sun at the horizon by a further 0.6 deg.
 * Source: Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed.: declination and equation of
 * time by Spencer (equations 1.6.1b and 1.5.3), height by equation 1.6.5.
 */
export function sunHeightDeg(utcMs: number, { latitudeDeg, longitudeDeg }: Location): number {
  const days = utcMs / dayMs;
  const day = Math.floor(days);
  const b = ((2 * Math.PI) / 365.2425) * (days % 365.2425);
  const [sin1, cos1, sin2, cos2] = [Math.sin(b), Math.cos(b), Math.sin(2 * b), Math.cos(2 * b)];
  const declination =
    0.006918 -
    0.399912 * cos1 +
    0.070257 * sin1 -
    0.006758 * cos2 +
    0.000907 * sin2 -
    0.002697 * Math.cos(3 * b) +
    0.00148 * Math.sin(3 * b);
  const equationMin =
    229.2 * (0.000075 + 0.001868 * cos1 - 0.032077 * sin1 - 0.014615 * cos2 - 0.04089 * sin2);
  const solarDays = days - day + longitudeDeg / 360 + equationMin / 1440;
  const hourAngle = 2 * Math.PI * (solarDays - 0.5);
  const latitude = latitudeDeg * radians;
  const sine =
    Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle) +
    Math.sin(latitude) * Math.sin(declination);
  return Math.round(Math.asin(Math.min(1, Math.max(-1, sine))) / radians / stepDeg) * stepDeg;
}

/**
 * Global irradiance on the level under a clear sky [W/m2].
 *
 * @param heightDeg - Height of the sun; 0 W/m2 at the horizon and below.
 *
 * Source: Haurwitz 1945, 1098 cos z exp(-0.059 / cos z), as given in Sandia report SAND2012-2389.
 */
export function clearSkyWM2(heightDeg: number): number {
  const sine = Math.sin(heightDeg * radians);
  return heightDeg <= 0 ? 0 : Math.round((1098 * sine * Math.exp(-0.059 / sine)) / stepWM2) * stepWM2;
}
