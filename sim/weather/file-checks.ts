import type { FileSeries } from './file-series.ts';
import type { FileQuantity, UnitGuess, WeatherFault } from './weather-file.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

interface Extent {
  readonly mean: number;
  readonly most: number;
  readonly line: number;
}

/** Mean and greatest of a column, and the line of the greatest. */
function extentOf(series: FileSeries, quantity: FileQuantity): Extent | undefined {
  let sum = 0;
  let known = 0;
  let most = Number.NEGATIVE_INFINITY;
  let line = 0;
  series.columns[quantity]?.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    sum += value;
    known++;
    if (value <= most) return;
    most = value;
    line = series.lines[i] ?? 0;
  });
  return known === 0 ? undefined : { mean: sum / known, most, line };
}

/** Units that cannot be the stated ones. The bounds are of the usual order of size, far outside any weather. */
export function unitFaults(series: FileSeries, spaceWM2: Float64Array): readonly WeatherFault[] {
  const faults: WeatherFault[] = [];
  const suspect = (quantity: FileQuantity, guess: (extent: Extent) => UnitGuess | undefined) => {
    const extent = extentOf(series, quantity);
    const looksLike = extent === undefined ? undefined : guess(extent);
    if (extent !== undefined && looksLike !== undefined)
      faults.push({ cause: 'unit-suspect', quantity, line: extent.line, looksLike });
  };
  suspect('airC', temperatureGuess);
  suspect('dewPointC', temperatureGuess);
  suspect('windMs', ({ mean, most }) => (mean > 11 || most > 75 ? 'km/h' : undefined));
  suspect('humidityFraction', ({ most }) => {
    if (most > 1.5) return 'percent';
    return most <= 0.0125 ? 'fraction' : undefined;
  });
  const clearness = overallClearness(series, spaceWM2);
  suspect('irradianceWM2', () => irradianceGuess(clearness, series));
  return faults;
}

function temperatureGuess({ mean, most }: Extent): UnitGuess | undefined {
  if (mean > 180) return 'kelvin';
  return mean > 45 || most > 65 ? 'fahrenheit' : undefined;
}

function overallClearness({ columns }: FileSeries, spaceWM2: Float64Array): number {
  let got = 0;
  let possible = 0;
  columns.irradianceWM2?.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    got += value;
    possible += spaceWM2[i] ?? 0;
  });
  return got / Math.max(1, possible);
}

function irradianceGuess(clearness: number, { count, stepMs }: FileSeries): UnitGuess | undefined {
  if (clearness > 0.95) return clearness < 3.4 ? 'kilojoules' : 'too-large';
  return clearness < 0.15 && count * stepMs >= 30 * dayMs ? 'too-small' : undefined;
}

/** So many days of light tell the time whatever the clouds do. */
const leastDays = 5;

/**
 * How late the light of a file is against the sun over the place [h]; undefined when it is on time within
 * three quarters of an hour or when the file is too short to tell.
 *
 * The light is laid over the sun outside the air with every shift of whole steps; the best overlap wins, and
 * a parabola through its neighbours finds the part of a step.
 */
export function lightLateH(series: FileSeries, spaceWM2: Float64Array): number | undefined {
  const light = series.columns.irradianceWM2;
  const { count, stepMs } = series;
  if (light === undefined || count * stepMs < leastDays * dayMs) return undefined;
  const leap = Math.max(1, Math.round(hourMs / stepMs));
  const overlap = (shift: number) => {
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const value = light[i] as number;
      const j = (i - shift * leap + 24 * leap * count) % count;
      if (!Number.isNaN(value)) sum += value * (spaceWM2[j] as number);
    }
    return sum;
  };
  const halfDay = Math.round(dayMs / 2 / (leap * stepMs));
  let best = 0;
  let bestOverlap = overlap(0);
  for (let shift = -halfDay; shift <= halfDay; shift++) {
    const here = overlap(shift);
    if (here <= bestOverlap * (1 + 1e-12)) continue;
    best = shift;
    bestOverlap = here;
  }
  const [below, above] = [overlap(best - 1), overlap(best + 1)];
  const bend = below - 2 * bestOverlap + above;
  const lateH = ((best + (bend < 0 ? (0.5 * (below - above)) / bend : 0)) * leap * stepMs) / hourMs;
  return Math.abs(lateH) < 0.75 ? undefined : Math.round(2 * lateH) / 2;
}
