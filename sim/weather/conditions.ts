/** The weather over the pan at one instant. */
export interface Conditions {
  readonly atMs: number;
  /** Mean solar time, hours after midnight, 0 to 24. */
  readonly solarHour: number;
  /** Zenith of the sun as seen [deg], 0 to 180, and its azimuth from north through east [deg], 0 to 360. */
  readonly sunZenithDeg: number;
  readonly sunAzimuthDeg: number;
  /** Beam and diffuse irradiance on the level, and their sum. */
  readonly beamWM2: number;
  readonly diffuseWM2: number;
  readonly irradianceWM2: number;
  readonly airC: number;
  readonly humidityFraction: number;
  readonly windMs: number;
  readonly longWaveWM2: number;
  /** Rain, and snow as water [mm/h]; 0 when dry. */
  readonly rainMmH: number;
  readonly snowMmH: number;
}
