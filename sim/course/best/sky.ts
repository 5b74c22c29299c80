import type { Conditions } from '../../weather/conditions.ts';
import type { Weather } from '../../weather/weather.ts';

/** The plant's own step [s], over which the sky of a longer one is averaged. */
const fineS = 10;

/** What is averaged; sun's place and hour are those at the end. */
const averaged = [
  'beamWM2',
  'diffuseWM2',
  'irradianceWM2',
  'airC',
  'humidityFraction',
  'windMs',
  'longWaveWM2',
  'rainMmH',
  'snowMmH',
] as const satisfies readonly (keyof Conditions)[];

/** The weather of a stretch of time in equal steps [s], each the mean of its parts. */
export function skyOf(weather: Weather, fromMs: number, toMs: number, stepS: number): readonly Conditions[] {
  const sky: Conditions[] = [];
  for (let atMs = fromMs; atMs < toMs; atMs += stepS * 1000) sky.push(meanOf(weather, atMs, stepS));
  return sky;
}

function meanOf(weather: Weather, fromMs: number, stepS: number): Conditions {
  const count = Math.max(1, Math.round(stepS / fineS));
  const mean = { ...weather.at(fromMs + stepS * 1000) };
  for (let part = 1; part < count; part++) {
    const conditions = weather.at(fromMs + (part * stepS * 1000) / count);
    for (const name of averaged) mean[name] += conditions[name];
  }
  for (const name of averaged) mean[name] /= count;
  return mean;
}
