import type { Site } from '../../shared-types/site.ts';
import { haurwitzWM2 } from './clear-sky.ts';
import { cloudDepth, coveredFraction, glareShare } from './clouds.ts';
import type { Conditions } from './conditions.ts';
import { courseOf, createCourse } from './day-course.ts';
import type { DayCharacter, DayKind } from './day-kinds.ts';
import { erbsDiffuseFraction } from './diffuse-fraction.ts';
import { extraterrestrialNormalWM2 } from './extraterrestrial.ts';
import { createNodes } from './nodes.ts';
import { hashNormal, smoothNoise, smoothStep } from './random.ts';
import { drawnKind, seasonMeanC } from './season.ts';
import { clearSkyEmissivity, dewPointC, humidityFraction, longWaveWM2, pressureHPa } from './sky.ts';
import { createSunTrack } from './sun-track.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

export interface Weather {
  at(atMs: number): Conditions;
}

export interface SeededWeather extends Weather {
  /** Kind of the solar day that holds the instant. */
  kindAt(atMs: number): DayKind;
}

export interface WeatherOptions {
  readonly location: Site['location'];
  readonly seed: number;
  /** The kinds of consecutive days, over and over; drawn by seed and season when absent. */
  readonly kinds?: readonly DayKind[];
}

/** Independent streams of noise of one seed. */
const stream = { warmth: 2, wind: 3, gust: 4, haze: 7, shower: 8, thickness: 9 } as const;

/** What changes too slowly to be computed at every step. */
interface Slow {
  readonly character: DayCharacter;
  readonly airC: number;
  readonly humidityFraction: number;
  readonly longWaveWM2: number;
  readonly windMs: number;
  readonly clearnessFraction: number;
  readonly throughCloudFraction: number;
  readonly normalWM2: number;
  readonly rainMmH: number;
  readonly snowMmH: number;
}

/** Invented weather of a place: the same at the same instant for the same seed, whatever was asked before. */
export function createWeather({ location, seed, kinds }: WeatherOptions): SeededWeather {
  const { latitudeDeg, longitudeDeg, elevationM } = location;
  const pressure = pressureHPa(elevationM);
  const sunAt = createSunTrack(latitudeDeg, longitudeDeg, { elevationM, pressureHPa: pressure });
  const solarOffsetMs = (longitudeDeg / 15) * hourMs;
  const solarDay = (atMs: number) => Math.floor((atMs + solarOffsetMs) / dayMs);
  const kindOf = (day: number) => kinds?.at(day % kinds.length) ?? drawnKind(seed, day, latitudeDeg);
  const characterAt = createCourse((day) =>
    courseOf(kindOf(day), seasonMeanC(day, latitudeDeg) + 1.2 * hashNormal(seed, stream.warmth, day)),
  );
  const nodes = createNodes((atMs) => {
    const day = solarDay(atMs);
    const solarHour = (atMs + solarOffsetMs - day * dayMs) / hourMs;
    return slowAt(seed, atMs, day, solarHour, pressure, characterAt(day, solarHour));
  });

  function at(atMs: number): Conditions {
    const sun = sunAt(atMs);
    const share = nodes.moveTo(atMs);
    const { before, after } = nodes;
    const light = lightAt(seed, atMs, sun.zenithDeg, sun.cosGeometricZenith, before, after, share);
    const solarDays = (atMs + solarOffsetMs) / dayMs;
    const gust = 0.75 + 0.5 * smoothNoise(seed, stream.gust, atMs, 60_000);
    return {
      atMs,
      solarHour: 24 * (solarDays - Math.floor(solarDays)),
      sunZenithDeg: sun.zenithDeg,
      sunAzimuthDeg: sun.azimuthDeg,
      beamWM2: light.beamWM2,
      diffuseWM2: light.diffuseWM2,
      irradianceWM2: light.beamWM2 + light.diffuseWM2,
      airC: between(before.airC, after.airC, share),
      humidityFraction: between(before.humidityFraction, after.humidityFraction, share),
      windMs: between(before.windMs, after.windMs, share) * gust,
      longWaveWM2: between(before.longWaveWM2, after.longWaveWM2, share),
      rainMmH: between(before.rainMmH, after.rainMmH, share),
      snowMmH: between(before.snowMmH, after.snowMmH, share),
    };
  }
  return { at, kindAt: (atMs) => kindOf(solarDay(atMs)) };
}

function between(before: number, after: number, share: number): number {
  return before + (after - before) * share;
}

function slowAt(
  seed: number,
  atMs: number,
  day: number,
  solarHour: number,
  pressure: number,
  character: DayCharacter,
): Slow {
  const airC = character.warmerK + character.swingK * Math.cos(((solarHour - 14.5) / 12) * Math.PI);
  const humidity = Math.min(0.99, humidityFraction(airC, character.warmerK - character.drynessK));
  const emissivity = clearSkyEmissivity(dewPointC(airC, humidity), solarHour, pressure);
  const shower = smoothStep((smoothNoise(seed, stream.shower, atMs, hourMs) - 0.4) / 0.4);
  const fallMmH = character.showerMmH * shower;
  const snowShare = smoothStep((2 - airC) / 2);
  // A closed sky is thicker and thinner by the hour.
  const thickness = 0.65 + 0.7 * smoothNoise(seed, stream.thickness, atMs, hourMs);
  return {
    character,
    airC,
    humidityFraction: humidity,
    longWaveWM2: longWaveWM2(airC, emissivity, character.cloudFraction),
    windMs: meanWindMs(character, seed, atMs, solarHour),
    clearnessFraction:
      character.clearnessFraction * (1 - 0.05 * smoothNoise(seed, stream.haze, atMs, 2 * hourMs)),
    throughCloudFraction: Math.min(1, character.throughCloudFraction * thickness),
    normalWM2: extraterrestrialNormalWM2(1 + (day % 365.2425)),
    rainMmH: fallMmH * (1 - snowShare),
    snowMmH: fallMmH * snowShare,
  };
}

/** Wind that rises in the afternoon and comes in spells of half an hour. */
function meanWindMs(character: DayCharacter, seed: number, atMs: number, solarHour: number): number {
  const afternoon = 0.75 + 0.35 * Math.max(0, Math.sin(((solarHour - 8) / 12) * Math.PI));
  const spell = 0.5 + smoothNoise(seed, stream.wind, atMs, hourMs / 2);
  return character.windMs * afternoon * spell;
}

const dark = { beamWM2: 0, diffuseWM2: 0 };

/**
 * Beam and diffuse light on the level. A clear sky is split by its clearness; a cloud before the sun takes the
 * beam and lets a share of the whole through as diffuse light; a cloud beside it adds some.
 */
function lightAt(
  seed: number,
  atMs: number,
  zenithDeg: number,
  cosGeometricZenith: number,
  before: Slow,
  after: Slow,
  share: number,
): { readonly beamWM2: number; readonly diffuseWM2: number } {
  const fullWM2 = haurwitzWM2(zenithDeg);
  if (fullWM2 <= 0) return dark;
  const clearWM2 = fullWM2 * between(before.clearnessFraction, after.clearnessFraction, share);
  const spaceWM2 = before.normalWM2 * cosGeometricZenith;
  const diffuseShare = spaceWM2 > clearWM2 ? erbsDiffuseFraction(clearWM2 / spaceWM2) : 1;
  const cloudShare = between(before.character.cloudFraction, after.character.cloudFraction, share);
  if (cloudShare <= 0) return { beamWM2: clearWM2 * (1 - diffuseShare), diffuseWM2: clearWM2 * diffuseShare };
  const depth = cloudDepth(seed, atMs, cloudShare);
  const covered = coveredFraction(depth);
  const through = between(before.throughCloudFraction, after.throughCloudFraction, share);
  const glare = glareShare(depth, before.character);
  return {
    beamWM2: clearWM2 * (1 - covered) * (1 - diffuseShare),
    diffuseWM2: clearWM2 * ((1 - covered) * diffuseShare + covered * through + glare),
  };
}
