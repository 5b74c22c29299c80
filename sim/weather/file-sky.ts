import { dayMs } from './calendar.ts';
import type { FileSeries } from './file-series.ts';
import type { Place } from './file-sun.ts';
import type { Repairs } from './repairs.ts';
import {
  clearSkyEmissivity,
  cloudySkyEmissivity,
  dewPointC,
  humidityFraction,
  longWaveWM2,
  pressureHPa,
  swinbankEmissivity,
} from './sky.ts';

/** Relative humidity of each interval; from the dew point where it is not there itself. Undefined without both. */
export function humidities({ columns, count }: FileSeries): Float64Array | undefined {
  const { airC, dewPointC: dew, humidityFraction: humidity } = columns;
  if (humidity === undefined && dew === undefined) return undefined;
  const result = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const given = humidity?.[i] ?? Number.NaN;
    result[i] = Number.isNaN(given) ? humidityFraction(airC?.[i] ?? 0, dew?.[i] ?? Number.NaN) : given;
  }
  return result;
}

/**
 * Long-wave irradiance of each interval [W/m2]: the file's own, else by the dew point and the cloud, else by the dew
 * point and the clearness of the day, else by the air temperature alone.
 */
export function longWaves(
  series: FileSeries,
  humidity: Float64Array | undefined,
  spaceWM2: Float64Array,
  place: Place,
  repairs: Repairs,
): Float64Array {
  const { columns, count, lines, startMs, offsetMs, stepMs } = series;
  const pressure = pressureHPa(place.elevationM);
  const result = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const given = columns.longWaveWM2?.[i] ?? Number.NaN;
    if (!Number.isNaN(given)) {
      result[i] = given;
      continue;
    }
    repairs.note('long-wave-by-formula', lines[i] ?? 1);
    const airC = columns.airC?.[i] as number;
    const cloud = columns.cloudFraction?.[i] ?? Number.NaN;
    if (humidity === undefined) {
      const guessed = Number.isNaN(cloud) ? cloudGuess(series, spaceWM2, i) : cloud;
      result[i] = longWaveWM2(airC, swinbankEmissivity(airC), guessed);
      continue;
    }
    const dewC = dewPointC(airC, humidity[i] as number);
    const solarMs = startMs - offsetMs + (i + 1) * stepMs + (place.longitudeDeg / 15) * 3_600_000;
    const solarHour = 24 * (solarMs / dayMs - Math.floor(solarMs / dayMs));
    result[i] = Number.isNaN(cloud)
      ? longWaveWM2(airC, clearSkyEmissivity(dewC, solarHour, pressure), cloudGuess(series, spaceWM2, i))
      : longWaveWM2(airC, cloudySkyEmissivity(dewC, cloud), 0);
  }
  return result;
}

/**
 * Cloud by the clearness of the half day before and after: none at 0.7, closed at 0.2 and below. A design choice;
 * at night nothing better is known.
 */
function cloudGuess({ columns, stepMs, count }: FileSeries, spaceWM2: Float64Array, index: number): number {
  const half = Math.round(dayMs / 2 / stepMs);
  let got = 0;
  let possible = 0;
  for (let i = Math.max(0, index - half); i < Math.min(count, index + half); i++) {
    got += columns.irradianceWM2?.[i] ?? 0;
    possible += spaceWM2[i] as number;
  }
  if (possible <= 0) return 0.5;
  return Math.min(1, Math.max(0, (0.7 - got / possible) / 0.5));
}
