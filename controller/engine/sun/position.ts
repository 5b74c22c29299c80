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
  // Those of the multiples follow from the first two, which is several times as quick.
  const sin1 = Math.sin(b);
  const cos1 = Math.cos(b);
  const sin2 = 2 * sin1 * cos1;
  const cos2 = cos1 * cos1 - sin1 * sin1;
  const sin3 = sin2 * cos1 + cos2 * sin1;
  const cos3 = cos2 * cos1 - sin2 * sin1;
  const declination =
    0.006918 -
    0.399912 * cos1 +
    0.070257 * sin1 -
    0.006758 * cos2 +
    0.000907 * sin2 -
    0.002697 * cos3 +
    0.00148 * sin3;
  const equationMin =
    229.2 * (0.000075 + 0.001868 * cos1 - 0.032077 * sin1 - 0.014615 * cos2 - 0.04089 * sin2);
  const solarDays = days - day + longitudeDeg / 360 + equationMin / 1440;
  const hourAngle = 2 * Math.PI * (solarDays - 0.5);
  const sinLatitude = Math.sin(latitudeDeg * radians);
  const sinDeclination = Math.sin(declination);
  // Neither a latitude nor a declination goes beyond a right angle.
  const cosLatitude = Math.sqrt(1 - sinLatitude * sinLatitude);
  const cosDeclination = Math.sqrt(1 - sinDeclination * sinDeclination);
  const sine = cosLatitude * cosDeclination * Math.cos(hourAngle) + sinLatitude * sinDeclination;
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
  if (heightDeg <= 0) return 0;
  const sine = Math.sin(heightDeg * radians);
  return Math.round((1098 * sine * Math.exp(-0.059 / sine)) / stepWM2) * stepWM2;
}
