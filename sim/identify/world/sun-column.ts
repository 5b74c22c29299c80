import type { Site } from '../../../shared-types/site.ts';
import { dayOfYear } from '../../weather/calendar.ts';
import { haurwitzWM2 } from '../../weather/clear-sky.ts';
import { extraterrestrialNormalWM2 } from '../../weather/extraterrestrial.ts';
import { pressureHPa } from '../../weather/sky.ts';
import { createSunTrack } from '../../weather/sun-track.ts';
import { minuteMs } from './minutes.ts';

/** The sun in the middle of each minute. */
export interface SunColumn {
  readonly zenithDeg: Float64Array;
  readonly azimuthDeg: Float64Array;
  /** Mean solar time [h]. */
  readonly solarHour: Float64Array;
  /** Irradiance on the level outside the air, and under a clear sky [W/m2]. */
  readonly spaceWM2: Float64Array;
  readonly clearWM2: Float64Array;
}

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

export function sunColumn({ location }: Site, fromMs: number, count: number): SunColumn {
  const { latitudeDeg, longitudeDeg, elevationM } = location;
  const sunAt = createSunTrack(latitudeDeg, longitudeDeg, {
    elevationM,
    pressureHPa: pressureHPa(elevationM),
  });
  const column = () => new Float64Array(count);
  const sun = {
    zenithDeg: column(),
    azimuthDeg: column(),
    solarHour: column(),
    spaceWM2: column(),
    clearWM2: column(),
  };
  for (let i = 0; i < count; i++) {
    const atMs = fromMs + (i + 0.5) * minuteMs;
    const { zenithDeg, azimuthDeg, cosGeometricZenith } = sunAt(atMs);
    const solarDays = (atMs + (longitudeDeg / 15) * hourMs) / dayMs;
    sun.zenithDeg[i] = zenithDeg;
    sun.azimuthDeg[i] = azimuthDeg;
    sun.solarHour[i] = 24 * (solarDays - Math.floor(solarDays));
    sun.spaceWM2[i] = Math.max(0, cosGeometricZenith) * extraterrestrialNormalWM2(dayOfYear(atMs));
    sun.clearWM2[i] = haurwitzWM2(zenithDeg);
  }
  return sun;
}
