import { dayMs, dayOfYear } from './calendar.ts';
import { extraterrestrialMeanWM2 } from './extraterrestrial.ts';
import type { FileSeries } from './file-series.ts';
import { cooperDeclinationDeg, equationOfTimeMin } from './solar-geometry.ts';

export interface Place {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
}

/** Hour angle of the sun at an instant by the textbook's equation of time [deg], 0 at noon, -180 to 180. */
export function textbookHourAngleDeg(utcMs: number, longitudeDeg: number): number {
  const solarMs = utcMs + (longitudeDeg / 15) * 3_600_000 + equationOfTimeMin(dayOfYear(utcMs)) * 60_000;
  return ((solarMs - dayMs * Math.floor(solarMs / dayMs)) / dayMs) * 360 - 180;
}

/**
 * Mean extraterrestrial irradiance on the level over each interval of a file [W/m2]: what its own values are held
 * against. The textbook's declination and equation of time do for that.
 */
export function spaceMeansWM2(series: FileSeries, place: Place): Float64Array {
  const means = new Float64Array(series.count);
  const widthDeg = (series.stepMs / dayMs) * 360;
  for (let i = 0; i < series.count; i++) {
    const fromMs = series.startMs - series.offsetMs + i * series.stepMs;
    const day = dayOfYear(fromMs + series.stepMs / 2);
    const fromDeg = textbookHourAngleDeg(fromMs, place.longitudeDeg);
    const declinationDeg = cooperDeclinationDeg(day);
    means[i] = extraterrestrialMeanWM2(place.latitudeDeg, declinationDeg, day, fromDeg, fromDeg + widthDeg);
  }
  return means;
}
