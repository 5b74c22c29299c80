import { type AirAndClock, refractionDeg, type SunPosition, sunPosition } from './sun.ts';

const radians = Math.PI / 180;
const nodeMs = 3_600_000;

export interface TrackedSun extends SunPosition {
  /** Cosine of the zenith without refraction: what the sun gives outside the air. */
  readonly cosGeometricZenith: number;
}

/** Declination and hour angle at a node, as seen from the place. */
interface Node {
  readonly declination: number;
  readonly hourAngle: number;
}

/**
 * The sun over one place, fast: declination and hour angle are exact at each full hour and joined by straight
 * lines; the spherical triangle and the refraction are computed anew for each instant.
 *
 * Error: 1e-4 deg on the sky against `sunPosition` (tests/reference/sun.test.ts). An azimuth next to the
 * vertical turns faster than that: what counts is the angle on the sky.
 */
export function createSunTrack(
  latitudeDeg: number,
  longitudeDeg: number,
  { pressureHPa = 1013.25, temperatureC = 10, ...others }: AirAndClock = {},
): (atMs: number) => TrackedSun {
  const sinLatitude = Math.sin(latitudeDeg * radians);
  const cosLatitude = Math.cos(latitudeDeg * radians);
  let index = Number.NaN;
  let before: Node = { declination: 0, hourAngle: 0 };
  let declinationStep = 0;
  let hourStep = 0;

  function nodeAt(nodeIndex: number): Node {
    const { zenithDeg, azimuthDeg } = sunPosition(nodeIndex * nodeMs, latitudeDeg, longitudeDeg, {
      ...others,
      pressureHPa: 0,
      temperatureC,
    });
    const zenith = zenithDeg * radians;
    const north = Math.sin(zenith) * Math.cos(azimuthDeg * radians);
    const east = Math.sin(zenith) * Math.sin(azimuthDeg * radians);
    const up = Math.cos(zenith);
    return {
      declination: Math.asin(Math.min(1, Math.max(-1, sinLatitude * up + cosLatitude * north))),
      hourAngle: Math.atan2(-east, cosLatitude * up - sinLatitude * north),
    };
  }

  function moveTo(nextIndex: number): void {
    const after = nodeAt(nextIndex + 1);
    before = nodeAt(nextIndex);
    index = nextIndex;
    declinationStep = after.declination - before.declination;
    hourStep = after.hourAngle - before.hourAngle;
    if (hourStep < 0) hourStep += 2 * Math.PI;
  }

  return (atMs) => {
    const place = atMs / nodeMs;
    const wanted = Math.floor(place);
    if (wanted !== index) moveTo(wanted);
    const declination = before.declination + declinationStep * (place - wanted);
    const hour = before.hourAngle + hourStep * (place - wanted);
    const sinDeclination = Math.sin(declination);
    const cosDeclination = Math.cos(declination);
    const cosHour = Math.cos(hour);
    const up = sinLatitude * sinDeclination + cosLatitude * cosDeclination * cosHour;
    const north = cosLatitude * sinDeclination - sinLatitude * cosDeclination * cosHour;
    const east = -cosDeclination * Math.sin(hour);
    const elevationDeg = Math.asin(Math.min(1, Math.max(-1, up))) / radians;
    const azimuthDeg = Math.atan2(east, north) / radians;
    return {
      zenithDeg: 90 - elevationDeg - refractionDeg(elevationDeg, pressureHPa, temperatureC),
      azimuthDeg: azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg,
      cosGeometricZenith: up,
    };
  };
}
