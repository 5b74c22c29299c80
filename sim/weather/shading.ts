import { cosIncidence, type Plane } from './tilt.ts';

const radians = Math.PI / 180;

export interface SunAngles {
  readonly sunZenithDeg: number;
  readonly sunAzimuthDeg: number;
}

/** A rectangular pan between walls of one height. */
export interface WalledPan {
  /** What stands above the sheet; 0 or less shades nothing. */
  readonly wallHeightM: number;
  /** Inside, along the azimuth and across it; above 0. */
  readonly lengthM: number;
  readonly widthM: number;
  /** Direction of the length, from north through east [deg]. */
  readonly azimuthDeg: number;
}

/**
 * Share of the sheet that its walls leave in the beam, 0 to 1; 0 with the sun at or below the horizon.
 *
 * The wall tops cast the rectangle of their edge onto the sheet, pushed away from the sun by
 * wallHeight tan(zenith). Lit is what lies in the rectangle and in its image: each side loses the push along it.
 */
export function wallLitFraction(sun: SunAngles, pan: WalledPan): number {
  if (sun.sunZenithDeg >= 90) return 0;
  if (pan.wallHeightM <= 0) return 1;
  const push = pan.wallHeightM * Math.tan(sun.sunZenithDeg * radians);
  const turn = (sun.sunAzimuthDeg - pan.azimuthDeg) * radians;
  const alongLeft = 1 - (push * Math.abs(Math.cos(turn))) / pan.lengthM;
  const acrossLeft = 1 - (push * Math.abs(Math.sin(turn))) / pan.widthM;
  return alongLeft > 0 && acrossLeft > 0 ? alongLeft * acrossLeft : 0;
}

/**
 * Share of a row that the like row in front keeps from the beam, 0 to 1. A row that the sun sees from behind
 * has no beam at all: 1.
 *
 * @param slantM - Height of a row along its slope, above 0.
 * @param pitchM - From the lower edge of a row to that of the next, level; above 0.
 *
 * Own derivation, for long rows on level ground. In the upright plane across the rows put a row's lower edge
 * at 0, x towards the row in front. Its points are (-s cos b, s sin b), 0 <= s <= slant; the front row's top
 * edge is (pitch - slant cos b, slant sin b). The beam runs down there with slope 1/c,
 * c = tan(zenith) cos(sun azimuth - row azimuth). The shadow of the edge falls on the row at
 * slant - s = pitch / (cos b + c sin b), and all below s is dark. By the formula of the incidence angle,
 * cos b + c sin b = cos(incidence) / cos(zenith).
 */
export function rowShadedFraction(sun: SunAngles, plane: Plane, slantM: number, pitchM: number): number {
  const cosZenith = Math.cos(sun.sunZenithDeg * radians);
  const cosAngle = cosIncidence(sun.sunZenithDeg, sun.sunAzimuthDeg, plane);
  if (cosZenith <= 0 || cosAngle <= 0) return 1;
  return Math.min(1, Math.max(0, 1 - (pitchM * cosZenith) / (slantM * cosAngle)));
}
