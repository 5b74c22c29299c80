import type { DayCharacter } from './day-kinds.ts';
import { smoothNoise, smoothStep } from './random.ts';

const hourMs = 3_600_000;
const stream = { cloud: 5, wisp: 6 } as const;

/** Broad clouds of some 15 minutes with wisps of 3 at their edges. */
const cloudMs = hourMs / 4;
const wispMs = hourMs / 20;

/**
 * Levels that the noise below stays under for 0, 10 ... 100 % of the time: counted over four million draws.
 * The ends lie outside what the noise reaches, so that a clear sky has no cloud and a closed one no hole.
 */
const cloudLevels = [-0.1, 0.2358, 0.313, 0.379, 0.4407, 0.5, 0.5597, 0.6213, 0.6871, 0.7644, 1.02];

/** Width of a cloud's edge in units of the noise: the shadow's edge takes the better part of a minute. */
const edgeWidth = 0.02;
/** A cloud next to the sun throws up to a tenth of clear-sky light on the pan as well (from memory). */
const glareFraction = 0.12;
const glareWidth = 0.1;

function cloudLevel(cloudFraction: number): number {
  const place = 10 * Math.min(1, Math.max(0, cloudFraction));
  const index = Math.min(9, Math.floor(place));
  const low = cloudLevels[index] as number;
  return low + ((cloudLevels[index + 1] as number) - low) * (place - index);
}

/** How deep in cloud the sun stands, in units of the noise: above 0 behind one, below 0 beside one. */
export function cloudDepth(seed: number, atMs: number, cloudFraction: number): number {
  const noise =
    0.75 * smoothNoise(seed, stream.cloud, atMs, cloudMs) +
    0.25 * smoothNoise(seed, stream.wisp, atMs, wispMs);
  return cloudLevel(cloudFraction) - noise;
}

/** Share of the sun's disc behind cloud, 0 to 1. */
export function coveredFraction(depth: number): number {
  return smoothStep(depth / edgeWidth + 0.5);
}

/** Light from the bright edge of a cloud close to the sun, as a share of clear-sky irradiance. */
export function glareShare(depth: number, character: DayCharacter): number {
  const beside = 1 + depth / glareWidth;
  if (depth > 0 || beside <= 0) return 0;
  return glareFraction * beside * beside * (1 - character.throughCloudFraction);
}
