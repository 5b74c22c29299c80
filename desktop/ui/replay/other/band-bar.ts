import type { Estimate } from '../../../../shared-types/tuning.ts';

/** Where a band stands on the scale of its row, as shares of it. */
export interface BandBar {
  readonly start: number;
  readonly length: number;
  readonly mark: number;
}

/**
 * Bars of estimates that are to be compared, on one scale: from the least to the greatest end of any of
 * them. Undefined where none of them has a width to show.
 */
export function bandBars(estimates: readonly Estimate[]): readonly BandBar[] | undefined {
  const from = Math.min(...estimates.map(({ low }) => low));
  const wide = Math.max(...estimates.map(({ high }) => high)) - from;
  if (!(wide > 0)) return undefined;
  return estimates.map(({ value, low, high }) => ({
    start: (low - from) / wide,
    length: (high - low) / wide,
    mark: (value - from) / wide,
  }));
}
