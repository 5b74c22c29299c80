import { lowPass } from '../blocks/low-pass.ts';
import type { Facts } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { WaterMemory } from '../state.ts';

/** Time constant of the pan's trend [ms]: long enough for sensors that resolve 0.1 K; a design choice. */
export const trendMs = 300_000;

/** Brings the low-passed pan temperature up to this step; null while there is no water to speak of. */
export function updateTrend(water: WaterMemory, { panC }: Facts, elapsedMs: number): WaterMemory {
  const dry = panC === null || water.level === 'empty' || water.level === 'part';
  const trendC = dry ? null : lowPass(water.trendC, panC, elapsedMs, trendMs);
  return trendC === water.trendC ? water : { ...water, trendC };
}

/**
 * How fast the pan's water warms [K/s]: its distance from its own low-pass, over the time constant.
 *
 * Lags by the time constant of five minutes. Null while it cannot be told.
 */
export function trendKS({ state: { water }, facts }: Situation): number | null {
  if (water.trendC === null || facts.panC === null) return null;
  return ((facts.panC - water.trendC) * 1000) / trendMs + 0;
}
