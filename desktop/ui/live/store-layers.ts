import { waterColour } from '../charts/temperature-scale.ts';

/** A measured temperature at a height of the store, 0 the bottom, 1 the top of its water. */
export interface StoreProbe {
  readonly height: number;
  readonly temperatureC: number;
}

export interface ColourStop {
  /** Place from the top, 0 to 1. */
  readonly offset: number;
  readonly colour: string;
}

/**
 * Colours from the top of the store's water to its bottom. Between two probes the temperature is
 * taken as changing evenly, beyond the outermost ones as theirs; without a probe there is no colour.
 */
export function storeLayers(probes: readonly StoreProbe[]): readonly ColourStop[] {
  const downwards = [...probes].sort((a, b) => b.height - a.height);
  const first = downwards[0];
  const last = downwards.at(-1);
  if (first === undefined || last === undefined) return [];
  const finely = downwards.slice(1).flatMap((probe, index) => between(downwards[index] ?? probe, probe));
  const above = first.height < 1 ? [stop(1, first.temperatureC)] : [];
  const below = last.height > 0 ? [stop(0, last.temperatureC)] : [];
  return [...above, stop(first.height, first.temperatureC), ...finely, ...below];
}

/** Steps of the colour scale between two probes: it is not straight in red, green and blue. */
const steps = 6;

function between(upper: StoreProbe, lower: StoreProbe): readonly ColourStop[] {
  return Array.from({ length: steps }, (_, index) => {
    const share = (index + 1) / steps;
    return stop(
      upper.height + (lower.height - upper.height) * share,
      upper.temperatureC + (lower.temperatureC - upper.temperatureC) * share,
    );
  });
}

const stop = (height: number, temperatureC: number): ColourStop => ({
  offset: 1 - height,
  colour: waterColour(temperatureC),
});
