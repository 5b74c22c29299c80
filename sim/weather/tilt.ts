const radians = Math.PI / 180;

/** A slightly or steeply tilted plane, its trigonometry done once. */
export interface Plane {
  /** Where the plane looks, from north through east [deg]. */
  readonly azimuthDeg: number;
  readonly sinSlope: number;
  readonly cosSlope: number;
  /** Share of what falls on the ground around that comes back, 0 to 1. */
  readonly groundReflectance: number;
}

/** What `tiltedWM2` reads of the weather. */
export interface SunAndSky {
  readonly sunZenithDeg: number;
  readonly sunAzimuthDeg: number;
  readonly beamWM2: number;
  readonly diffuseWM2: number;
}

/** Lowest sun that the beam ratio is computed for: below, tiny errors of a split would become great beams. */
const leastCosZenith = Math.cos(87 * radians);

/** @param slopeDeg - 0 level, 90 upright. @param azimuthDeg - Where the plane looks, from north through east. */
export function planeOf(slopeDeg: number, azimuthDeg: number, groundReflectance = 0.2): Plane {
  return {
    azimuthDeg,
    sinSlope: Math.sin(slopeDeg * radians),
    cosSlope: Math.cos(slopeDeg * radians),
    groundReflectance,
  };
}

/**
 * Cosine of the angle between the beam and the normal of a plane; negative when the sun is behind it.
 *
 * Source: Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed., equation 1.6.3.
 */
export function cosIncidence(sunZenithDeg: number, sunAzimuthDeg: number, plane: Plane): number {
  const zenith = sunZenithDeg * radians;
  const turn = (sunAzimuthDeg - plane.azimuthDeg) * radians;
  return Math.cos(zenith) * plane.cosSlope + Math.sin(zenith) * plane.sinSlope * Math.cos(turn);
}

/**
 * Beam on the plane over beam on the level, 0 or more: Rb of Duffie & Beckman section 1.8.
 *
 * With the sun less than 3 deg up the ratio is held to what the sun 3 deg up would do at most, 1/cos 87 deg; no
 * plane gets more from a level beam that is nearly nothing.
 */
export function beamRatio(sunZenithDeg: number, sunAzimuthDeg: number, plane: Plane): number {
  const cosZenith = Math.cos(sunZenithDeg * radians);
  if (cosZenith <= 0) return 0;
  return Math.max(0, cosIncidence(sunZenithDeg, sunAzimuthDeg, plane)) / Math.max(cosZenith, leastCosZenith);
}

/** Diffuse light on the plane from an even sky and an even ground [W/m2]. */
export function diffuseOnPlaneWM2(beamWM2: number, diffuseWM2: number, plane: Plane): number {
  const skyShare = 0.5 * (1 + plane.cosSlope);
  return diffuseWM2 * skyShare + (beamWM2 + diffuseWM2) * plane.groundReflectance * (1 - skyShare);
}

/**
 * Irradiance on a plane [W/m2].
 *
 * @param litFraction - Share of the plane that no wall or row keeps from the beam, 0 to 1.
 *
 * Error: an even sky gives some 5 to 10 % too little on a steep plane that faces the sun (from memory); on a
 * pitch of a few degrees nothing to speak of. Source: Liu & Jordan 1963, as equation 2.15.1 of Duffie & Beckman.
 */
export function tiltedWM2(sun: SunAndSky, plane: Plane, litFraction = 1): number {
  const ratio = beamRatio(sun.sunZenithDeg, sun.sunAzimuthDeg, plane);
  return litFraction * sun.beamWM2 * ratio + diffuseOnPlaneWM2(sun.beamWM2, sun.diffuseWM2, plane);
}
