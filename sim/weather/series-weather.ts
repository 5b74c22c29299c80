import { lightLateH, unitFaults } from './file-checks.ts';
import { diffuseShares, globalFromParts, irradianceFromSunshine } from './file-light.ts';
import { clipValues, fillGaps } from './file-mending.ts';
import type { FileSeries } from './file-series.ts';
import { humidities, longWaves } from './file-sky.ts';
import { type Place, spaceMeansWM2 } from './file-sun.ts';
import { createFileWeather } from './file-weather.ts';
import type { Repairs } from './repairs.ts';
import type { FileQuantity, WeatherFile } from './weather-file.ts';

/** Air that no file says anything about is taken as neither dry nor damp; a design choice. */
const unknownHumidityFraction = 0.7;

/** Checks a file's series, mends what may be mended and makes weather of it. */
export function weatherOfSeries(raw: FileSeries, place: Place, repairs: Repairs): WeatherFile {
  const spaceWM2 = spaceMeansWM2(raw, place);
  const series = withLight(raw, spaceWM2, place, repairs);
  const units = unitFaults(series, spaceWM2);
  if (units.length > 0) return { ok: false, faults: units };
  const lateHours = lightLateH(series, spaceWM2);
  if (lateHours !== undefined) return { ok: false, faults: [{ cause: 'clock-suspect', lateHours }] };
  clipValues(series, spaceWM2, repairs);
  const gaps = fillGaps(series, spaceWM2, neededOf(series), repairs);
  const { airC, windMs, irradianceWM2, rainMm, snowMm } = series.columns;
  if (airC === undefined || windMs === undefined || irradianceWM2 === undefined || gaps.length > 0)
    return { ok: false, faults: gaps };
  const humidity = humidities(series);
  return {
    ok: true,
    value: {
      weather: createFileWeather(
        {
          ...series,
          airC,
          windMs,
          irradianceWM2,
          humidityFraction: humidity ?? new Float64Array(series.count).fill(unknownHumidityFraction),
          diffuseShare: diffuseShares(series, spaceWM2, repairs),
          longWaveWM2: longWaves(series, humidity, spaceWM2, place, repairs),
          rainMm: rainMm?.map(noneIfMissing),
          snowMm: snowMm?.map(noneIfMissing),
        },
        place,
      ),
      repairs: repairs.list(),
    },
  };
}

function noneIfMissing(value: number): number {
  return Number.isNaN(value) ? 0 : value;
}

/** A series that has irradiance, of its parts or of its sunshine if need be; only with columns that hold anything. */
function withLight(raw: FileSeries, spaceWM2: Float64Array, place: Place, repairs: Repairs): FileSeries {
  const columns = { ...raw.columns };
  for (const quantity of optional)
    if (columns[quantity]?.every(Number.isNaN) === true) delete columns[quantity];
  const series = { ...raw, columns };
  if (columns.irradianceWM2 !== undefined) {
    globalFromParts(series, spaceWM2);
    return series;
  }
  if (columns.sunshineH === undefined) return series;
  fillGaps(series, spaceWM2, ['sunshineH'], repairs);
  columns.irradianceWM2 = irradianceFromSunshine(series, columns.sunshineH, spaceWM2, place);
  return series;
}

const optional = [
  'dewPointC',
  'humidityFraction',
  'directNormalWM2',
  'diffuseWM2',
  'longWaveWM2',
  'cloudFraction',
  'rainMm',
  'snowMm',
] as const satisfies readonly FileQuantity[];

/** What must be whole: humidity or dew point, whichever stands for both. */
function neededOf({ columns }: FileSeries): readonly FileQuantity[] {
  const damp = columns.humidityFraction === undefined ? 'dewPointC' : 'humidityFraction';
  return ['airC', 'windMs', 'irradianceWM2', damp];
}
