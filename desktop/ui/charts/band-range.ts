import type { Band } from './series.ts';

/** Least and greatest end of a band's axis; undefined leaves an end to the data. */
export interface BandRange {
  readonly min: number | undefined;
  readonly suggestedMax: number | undefined;
}

/** A height that a band has at least, in its own unit, so that noise around nought stays small. */
const leastHeights: Readonly<Record<Exclude<Band, 'temperature'>, number>> = {
  radiation: 200,
  flow: 5,
  pump: 100,
  heat: 1,
  power: 20,
  level: 20,
  wind: 2,
  humidity: 100,
};

/** What is asked of a curve here: its values in the band's unit. */
interface Curve {
  readonly data: readonly { readonly y: number | null }[];
}

/** Share of a band's height up to which values below nought pass for noise. */
const noiseFraction = 0.1;

/**
 * The axis of everything but temperature stands on nought. Noise below it is cut off; what is truly
 * negative, say water that flows backwards, is shown.
 */
export function bandRange(band: Band, curves: readonly Curve[]): BandRange {
  if (band === 'temperature') return { min: undefined, suggestedMax: undefined };
  let least = 0;
  let most = leastHeights[band];
  for (const { data } of curves)
    for (const { y } of data) {
      if (y === null) continue;
      if (y < least) least = y;
      if (y > most) most = y;
    }
  return { min: least < -noiseFraction * most ? undefined : 0, suggestedMax: leastHeights[band] };
}
