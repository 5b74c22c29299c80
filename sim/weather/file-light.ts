import { dayMs, dayOfYear } from './calendar.ts';
import { erbsDiffuseFraction, sunshineClearness } from './diffuse-fraction.ts';
import { extraterrestrialNormalWM2 } from './extraterrestrial.ts';
import type { FileSeries } from './file-series.ts';
import type { Place } from './file-sun.ts';
import type { Repairs } from './repairs.ts';
import { cooperDeclinationDeg, dayLengthH } from './solar-geometry.ts';

/** Irradiance made of daily bright sunshine: the day's clearness over each of its intervals. */
export function irradianceFromSunshine(
  series: FileSeries,
  sunshineH: Float64Array,
  spaceWM2: Float64Array,
  place: Place,
): Float64Array {
  const light = new Float64Array(series.count);
  const perDay = Math.round(dayMs / series.stepMs);
  const solarStartMs = series.startMs - series.offsetMs + (place.longitudeDeg / 15) * 3_600_000;
  const firstOfDay = Math.round((Math.ceil(solarStartMs / dayMs) * dayMs - solarStartMs) / series.stepMs);
  for (let from = firstOfDay === 0 ? 0 : firstOfDay - perDay; from < series.count; from += perDay) {
    let sunny = 0;
    for (let i = Math.max(0, from); i < Math.min(series.count, from + perDay); i++)
      sunny += sunshineH[i] as number;
    const day = dayOfYear(solarStartMs + (from + perDay / 2) * series.stepMs);
    const possibleH = dayLengthH(place.latitudeDeg, cooperDeclinationDeg(day));
    const clearness = possibleH > 0 ? sunshineClearness(sunny, possibleH) : 0;
    for (let i = Math.max(0, from); i < Math.min(series.count, from + perDay); i++)
      light[i] = clearness * (spaceWM2[i] as number);
  }
  return light;
}

/** Parts may differ from the whole by so much before it is named [W/m2] and as a share of it. */
const partsMarginWM2 = 50;
const partsMarginFraction = 0.15;

/**
 * Share of diffuse light in each interval, 0 to 1: from the file's diffuse light, else from its direct beam, else
 * from the clearness.
 */
export function diffuseShares(series: FileSeries, spaceWM2: Float64Array, repairs: Repairs): Float64Array {
  const { columns, count, lines, startMs, offsetMs, stepMs } = series;
  const shares = new Float64Array(count).fill(1);
  for (let i = 0; i < count; i++) {
    const globalWM2 = columns.irradianceWM2?.[i] ?? 0;
    if (globalWM2 <= 0) continue;
    const day = dayOfYear(startMs - offsetMs + i * stepMs);
    const spaceHere = spaceWM2[i] as number;
    const diffuse = columns.diffuseWM2?.[i] ?? Number.NaN;
    const normal = columns.directNormalWM2?.[i] ?? Number.NaN;
    const beam = (normal * spaceHere) / extraterrestrialNormalWM2(day);
    const parts = beam + diffuse;
    if (Math.abs(parts - globalWM2) > partsMarginWM2 + partsMarginFraction * globalWM2)
      repairs.note('parts-disagree', lines[i] ?? 1);
    let share = diffuse / globalWM2;
    if (Number.isNaN(share)) share = 1 - beam / globalWM2;
    if (Number.isNaN(share)) {
      share = spaceHere > globalWM2 ? erbsDiffuseFraction(globalWM2 / spaceHere) : 1;
      repairs.note('diffuse-split-by-clearness', lines[i] ?? 1);
    }
    shares[i] = Math.min(1, Math.max(0, share));
  }
  return shares;
}

/** Global light of intervals that only have both its parts. */
export function globalFromParts(series: FileSeries, spaceWM2: Float64Array): void {
  const { irradianceWM2, diffuseWM2, directNormalWM2 } = series.columns;
  irradianceWM2?.forEach((value, i) => {
    if (!Number.isNaN(value)) return;
    const day = dayOfYear(series.startMs - series.offsetMs + i * series.stepMs);
    const cosZenith = (spaceWM2[i] as number) / extraterrestrialNormalWM2(day);
    irradianceWM2[i] = (diffuseWM2?.[i] ?? Number.NaN) + (directNormalWM2?.[i] ?? Number.NaN) * cosZenith;
  });
}
