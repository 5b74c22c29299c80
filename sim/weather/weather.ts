import type { Site } from '../../shared-types/site.ts';
import { haurwitzWM2 } from './clear-sky.ts';
import { type DayCharacter, type DayKind, dayCharacters, dayWeights } from './day-kinds.ts';
import { hashFraction, hashNormal, smoothNoise, smoothStep } from './random.ts';
import { clearSkyEmissivity, dewPointC, humidityFraction, longWaveWM2, pressureHPa } from './sky.ts';
import { sunPosition } from './sun.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

/** The weather over the pan at one instant. */
export interface Conditions {
  readonly atMs: number;
  /** Mean solar time, hours after midnight, 0 to 24. */
  readonly solarHour: number;
  readonly sunZenithDeg: number;
  readonly irradianceWM2: number;
  readonly airC: number;
  readonly humidityFraction: number;
  readonly windMs: number;
  readonly longWaveWM2: number;
}

export interface Weather {
  at(atMs: number): Conditions;
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
const stream = { kind: 1, warmth: 2, wind: 3, gust: 4, cloud: 5, wisp: 6, haze: 7 } as const;

/** Invented weather of a place: the same at the same instant for the same seed, whatever was asked before. */
export function createWeather({ location, seed, kinds }: WeatherOptions): Weather {
  const { latitudeDeg, longitudeDeg } = location;
  const pressure = pressureHPa(location.elevationM);
  const solarMs = (atMs: number) => atMs + (longitudeDeg / 15) * hourMs;
  const solarDay = (atMs: number) => Math.floor(solarMs(atMs) / dayMs);
  const kindOf = (day: number) => kinds?.at(day % kinds.length) ?? drawnKind(seed, day, latitudeDeg);
  const airMeanC = (day: number) =>
    seasonMeanC(day, latitudeDeg) +
    dayCharacters[kindOf(day)].warmerK +
    1.2 * hashNormal(seed, stream.warmth, day);
  const blended = createBlend((day) => ({ ...dayCharacters[kindOf(day)], warmerK: airMeanC(day) }));

  function at(atMs: number): Conditions {
    const day = solarDay(atMs);
    const solarHour = (solarMs(atMs) - day * dayMs) / hourMs;
    const character = blended(day, solarHour);
    const { zenithDeg } = sunPosition(atMs, latitudeDeg, longitudeDeg, pressure);
    const airC = character.warmerK + character.swingK * Math.cos(((solarHour - 14.5) / 12) * Math.PI);
    const humidity = Math.min(0.99, humidityFraction(airC, character.warmerK - character.drynessK));
    const emissivity = clearSkyEmissivity(dewPointC(airC, humidity), solarHour, pressure);
    return {
      atMs,
      solarHour,
      sunZenithDeg: zenithDeg,
      irradianceWM2: haurwitzWM2(zenithDeg) * throughFraction(character, seed, atMs),
      airC,
      humidityFraction: humidity,
      windMs: windMs(character, seed, atMs, solarHour),
      longWaveWM2: longWaveWM2(airC, emissivity, character.cloudFraction),
    };
  }
  return { at, kindAt: (atMs) => kindOf(solarDay(atMs)) };
}

/**
 * Mean air temperature of the season at a place near the sea [°C]: colder and more changing away from
 * the equator, warmest in August in the north. Invented scenery.
 */
function seasonMeanC(day: number, latitudeDeg: number): number {
  const away = Math.abs(latitudeDeg);
  const warmest = latitudeDeg >= 0 ? 222 : 40;
  const season = Math.cos((2 * Math.PI * ((day % 365.2425) - warmest)) / 365.2425);
  return 28 - 0.28 * away + 0.13 * away * season;
}

function drawnKind(seed: number, day: number, latitudeDeg: number): DayKind {
  const drawn = hashFraction(seed, stream.kind, day);
  if (seasonMeanC(day, latitudeDeg) < 11 && drawn > 0.8) return 'frost-night';
  let sum = 0;
  for (const [kind, weight] of dayWeights) {
    sum += weight;
    if (drawn < sum) return kind;
  }
  return 'clear';
}

/** Characters of two neighbouring days joined over four hours around midnight, so that nothing jumps. */
function createBlend(characterOf: (day: number) => DayCharacter) {
  let kept = { day: Number.NaN, days: [] as DayCharacter[] };
  return (day: number, solarHour: number): DayCharacter => {
    if (kept.day !== day) kept = { day, days: [day - 1, day, day + 1].map(characterOf) };
    const [before, today, after] = kept.days as [DayCharacter, DayCharacter, DayCharacter];
    if (solarHour < 2) return between(before, today, smoothStep((solarHour + 2) / 4));
    if (solarHour > 22) return between(today, after, smoothStep((solarHour - 22) / 4));
    return today;
  };
}

function between(a: DayCharacter, b: DayCharacter, share: number): DayCharacter {
  const mix = (key: keyof DayCharacter) => a[key] + (b[key] - a[key]) * share;
  return {
    clearnessFraction: mix('clearnessFraction'),
    throughCloudFraction: mix('throughCloudFraction'),
    cloudFraction: mix('cloudFraction'),
    warmerK: mix('warmerK'),
    swingK: mix('swingK'),
    drynessK: mix('drynessK'),
    windMs: mix('windMs'),
  };
}

/** Share of clear-sky irradiance that reaches the pan: clouds of some 20 minutes with ragged edges. */
function throughFraction(character: DayCharacter, seed: number, atMs: number): number {
  const haze = 1 - 0.05 * smoothNoise(seed, stream.haze, atMs, 2 * hourMs);
  const cloud =
    0.75 * smoothNoise(seed, stream.cloud, atMs, hourMs / 4) +
    0.25 * smoothNoise(seed, stream.wisp, atMs, hourMs / 20);
  // The noise gathers around a half; stretched so that a cloud share of 0 or 1 is never undercut.
  const threshold = -0.15 + 1.3 * character.cloudFraction;
  const covered = smoothStep((threshold - cloud) / 0.12 + 0.5);
  return character.clearnessFraction * haze * (1 + (character.throughCloudFraction - 1) * covered);
}

/** Wind that rises in the afternoon, comes in spells of half an hour and in gusts of a minute. */
function windMs(character: DayCharacter, seed: number, atMs: number, solarHour: number): number {
  const afternoon = 0.75 + 0.35 * Math.max(0, Math.sin(((solarHour - 8) / 12) * Math.PI));
  const spell = 0.5 + smoothNoise(seed, stream.wind, atMs, hourMs / 2);
  const gust = 0.75 + 0.5 * smoothNoise(seed, stream.gust, atMs, 60_000);
  return character.windMs * afternoon * spell * gust;
}
