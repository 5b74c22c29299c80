import type { Conditions } from '../weather/conditions.ts';
import { rowShadedFraction, wallLitFraction } from '../weather/shading.ts';
import { tiltedWM2 } from '../weather/tilt.ts';
import type { Parts } from './parts.ts';

/** Irradiance on the sheet [W/m2]: the beam as far as no wall and no row is in its way, and the diffuse light. */
export function sheetSunWM2(weather: Conditions, { pan }: Parts): number {
  if (weather.irradianceWM2 === 0) return 0;
  const shaded =
    pan.rowPitchM === 0 ? 0 : rowShadedFraction(weather, pan.plane, pan.walls.lengthM, pan.rowPitchM);
  const lit = weather.beamWM2 === 0 ? 0 : wallLitFraction(weather, pan.walls) * (1 - shaded);
  return tiltedWM2(weather, pan.plane, lit);
}
