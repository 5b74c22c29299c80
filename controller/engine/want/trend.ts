import { lowPass } from '../blocks/low-pass.ts';
import type { Situation } from '../situation.ts';

/** Time constant of the pan's trend [ms]: long enough for sensors that resolve 0.1 K; a design choice. */
const trendMs = 600_000;

/** The low-passed pan temperature after this step [°C]; null while there is no water to speak of. */
export function updateTrend({ state: { water }, facts, elapsedMs }: Situation): number | null {
  if (facts.panC === null || water.level === 'empty' || water.level === 'part') return null;
  return lowPass(water.trendC, facts.panC, elapsedMs, trendMs);
}

/**
 * How fast the pan's water warms [K/s]: its distance from its own low-pass, over the time constant.
 *
 * Lags by the time constant of ten minutes. Null while it cannot be told.
 */
export function trendKS({ state: { water }, facts }: Situation): number | null {
  if (water.trendC === null || facts.panC === null) return null;
  return ((facts.panC - water.trendC) * 1000) / trendMs + 0;
}
