import { civilDayOf, dayMs, dayOfYear, daysOf, isCivilDay } from './calendar.ts';
import type { Conditions } from './conditions.ts';
import { extraterrestrialNormalWM2 } from './extraterrestrial.ts';
import type { FileSeries } from './file-series.ts';
import type { Place } from './file-sun.ts';
import { smoothStep } from './random.ts';
import { pressureHPa } from './sky.ts';
import { createSunTrack } from './sun-track.ts';
import type { Weather } from './weather.ts';

/** A file's columns, whole and checked. */
export interface FilledSeries extends Pick<FileSeries, 'offsetMs' | 'startMs' | 'stepMs' | 'count'> {
  readonly airC: Float64Array;
  readonly humidityFraction: Float64Array;
  readonly windMs: Float64Array;
  readonly irradianceWM2: Float64Array;
  readonly diffuseShare: Float64Array;
  readonly longWaveWM2: Float64Array;
  /** Over the interval [mm]; snow undefined: rain in the cold falls as snow. */
  readonly rainMm: Float64Array | undefined;
  readonly snowMm: Float64Array | undefined;
}

/** What holds for one interval of real time. */
interface Slot {
  readonly fromMs: number;
  readonly before: number;
  readonly here: number;
  /** Light on the level for a cosine of 1; undefined: the same all through, from the whole sky. */
  readonly normalWM2: number | undefined;
}

const hourMs = 3_600_000;
const samplesPerSlot = 60;

/**
 * The weather of a file. Air, humidity and wind are joined by straight lines between the ends of intervals; light
 * follows the sun within an interval so that the interval keeps its mean; long-wave light, rain and snow stay the
 * same all through it.
 *
 * Outside its span a file of a year repeats by month, day and hour, 29 February taking the 28th where its year has
 * none; a shorter file repeats its whole days.
 */
export function createFileWeather(series: FilledSeries, place: Place): Weather {
  const { stepMs, startMs, offsetMs, count } = series;
  const pressure = pressureHPa(place.elevationM);
  const sunAt = createSunTrack(place.latitudeDeg, place.longitudeDeg, {
    elevationM: place.elevationM,
    pressureHPa: pressure,
  });
  const anchorMs = startMs - offsetMs;
  let slot: Slot | undefined;

  function slotAt(fromMs: number): Slot {
    const here = indexOf(series, fromMs + offsetMs);
    // Before the first interval of a short file nothing is known.
    const isStart = fromMs === anchorMs && count * stepMs < 365 * dayMs;
    const before = isStart ? here : indexOf(series, fromMs + offsetMs - stepMs);
    let sum = 0;
    for (let i = 0; i < samplesPerSlot; i++)
      sum += Math.max(0, sunAt(fromMs + ((i + 0.5) / samplesPerSlot) * stepMs).cosGeometricZenith);
    const meanCos = sum / samplesPerSlot;
    const light = series.irradianceWM2[here] as number;
    // In twilight there is more light than the sun itself could give: shaped by it, a few watts would be a spike.
    const isSunlit = light < meanCos * extraterrestrialNormalWM2(dayOfYear(fromMs));
    const normalWM2 = isSunlit ? light / meanCos : undefined;
    return { fromMs, before, here, normalWM2 };
  }

  function at(atMs: number): Conditions {
    if (slot === undefined || atMs < slot.fromMs || atMs >= slot.fromMs + stepMs)
      slot = slotAt(anchorMs + Math.floor((atMs - anchorMs) / stepMs) * stepMs);
    const { before, here, normalWM2 } = slot;
    const share = (atMs - slot.fromMs) / stepMs;
    const sun = sunAt(atMs);
    const mix = (column: Float64Array) =>
      (column[before] as number) + ((column[here] as number) - (column[before] as number)) * share;
    const whole =
      normalWM2 === undefined
        ? (series.irradianceWM2[here] as number)
        : normalWM2 * Math.max(0, sun.cosGeometricZenith);
    const diffuseWM2 = whole * (normalWM2 === undefined ? 1 : (series.diffuseShare[here] as number));
    const beamWM2 = whole - diffuseWM2;
    const solarDays = (atMs + (place.longitudeDeg / 15) * hourMs) / dayMs;
    const airC = mix(series.airC);
    const fallMmH = ((series.rainMm?.[here] ?? 0) * hourMs) / stepMs;
    const snowShare = series.snowMm === undefined ? smoothStep((2 - airC) / 2) : 0;
    const snowMmH = ((series.snowMm?.[here] ?? 0) * hourMs) / stepMs + fallMmH * snowShare;
    return {
      atMs,
      solarHour: 24 * (solarDays - Math.floor(solarDays)),
      sunZenithDeg: sun.zenithDeg,
      sunAzimuthDeg: sun.azimuthDeg,
      beamWM2,
      diffuseWM2,
      irradianceWM2: beamWM2 + diffuseWM2,
      airC,
      humidityFraction: mix(series.humidityFraction),
      windMs: mix(series.windMs),
      longWaveWM2: series.longWaveWM2[here] as number,
      rainMmH: fallMmH * (1 - snowShare),
      snowMmH,
    };
  }
  return { at };
}

/** Which interval of the file serves one that begins at an instant of the file's clock. */
function indexOf({ startMs, stepMs, count }: FilledSeries, fromMs: number): number {
  const place = Math.round((fromMs - startMs) / stepMs);
  if (place >= 0 && place < count) return place;
  const wholeDays = Math.floor((count * stepMs) / dayMs);
  const perDay = dayMs / stepMs;
  if (wholeDays < 365) {
    const cycle = Math.max(1, wholeDays) * perDay;
    return Math.min(count - 1, place - cycle * Math.floor(place / cycle));
  }
  const days = Math.floor(fromMs / dayMs);
  const { month, day } = civilDayOf(days);
  const firstYear = civilDayOf(Math.floor(startMs / dayMs)).year;
  // 365 days around a 29 February lack a day at their end: the day before serves.
  for (const back of [0, perDay]) {
    for (const year of [firstYear, firstYear + 1]) {
      const known = isCivilDay({ year, month, day }) ? { year, month, day } : { year, month, day: 28 };
      const moved = place + (daysOf(known) - days) * perDay - back;
      if (moved >= 0 && moved < count) return moved;
    }
  }
  return 0;
}
