import type { DayKind } from './day-kinds.ts';
import { hashFraction } from './random.ts';

const yearDays = 365.2425;

/** Spells of weather, each some days long, and how their days are spread over the kinds. */
type Spell = 'settled' | 'changeable' | 'wet';
type Weights<T> = readonly (readonly [T, number])[];

const stream = { renewal: 21, spell: 22, kind: 23 } as const;

/** How often a day begins a new spell, drawn without regard to the old one: on average every second day. */
const renewalFraction = 0.45;
/** So long does no spell last: the way back to its beginning must end. */
const longestSpellDays = 20;

const spells = {
  cold: [
    ['settled', 0.38],
    ['changeable', 0.3],
    ['wet', 0.32],
  ],
  mild: [
    ['settled', 0.46],
    ['changeable', 0.34],
    ['wet', 0.2],
  ],
  warm: [
    ['settled', 0.6],
    ['changeable', 0.28],
    ['wet', 0.12],
  ],
} as const satisfies Record<string, Weights<Spell>>;
type Season = keyof typeof spells;

const kinds: Readonly<Record<Season, Readonly<Record<Spell, Weights<DayKind>>>>> = {
  cold: {
    settled: [
      ['clear', 0.3],
      ['hazy', 0.2],
      ['frost-night', 0.3],
      ['frost-after-sun', 0.2],
    ],
    changeable: [
      ['broken', 0.55],
      ['windy', 0.3],
      ['frost-wind', 0.15],
    ],
    wet: [
      ['overcast', 0.5],
      ['rainy', 0.38],
      ['snowy', 0.12],
    ],
  },
  mild: {
    settled: [
      ['clear', 0.65],
      ['hazy', 0.35],
    ],
    changeable: [
      ['broken', 0.7],
      ['windy', 0.3],
    ],
    wet: [
      ['overcast', 0.6],
      ['rainy', 0.4],
    ],
  },
  warm: {
    settled: [
      ['clear', 0.55],
      ['hazy', 0.25],
      ['hot-still', 0.2],
    ],
    changeable: [
      ['broken', 0.8],
      ['windy', 0.2],
    ],
    wet: [
      ['overcast', 0.6],
      ['rainy', 0.4],
    ],
  },
};

/**
 * Mean air temperature of the season at a place near the sea [°C]: colder and more changing away from
 * the equator, warmest in August in the north. Invented scenery.
 */
export function seasonMeanC(day: number, latitudeDeg: number): number {
  const away = Math.abs(latitudeDeg);
  const warmest = latitudeDeg >= 0 ? 222 : 40;
  const season = Math.cos((2 * Math.PI * ((day % yearDays) - warmest)) / yearDays);
  return 28 - 0.28 * away + 0.13 * away * season;
}

/**
 * The kind of a day, drawn by seed and season.
 *
 * Spells are a Markov chain: a day renews the draw or goes on as the day before. As a renewal does not look at
 * the past, the spell of any day is found from the last renewal before it, without the days in between.
 * A settled spell that ends in a wet one ends with a front.
 *
 * @param day - Days since 1970.
 */
export function drawnKind(seed: number, day: number, latitudeDeg: number): DayKind {
  const season = seasonOf(seasonMeanC(day, latitudeDeg));
  const spell = spellOf(seed, day, latitudeDeg);
  if (spell === 'wet' && spellOf(seed, day - 1, latitudeDeg) === 'settled') return 'front-at-noon';
  return drawn(kinds[season][spell], hashFraction(seed, stream.kind, day));
}

function spellOf(seed: number, day: number, latitudeDeg: number): Spell {
  let began = day;
  while (day - began < longestSpellDays && hashFraction(seed, stream.renewal, began) >= renewalFraction)
    began--;
  const season = seasonOf(seasonMeanC(began, latitudeDeg));
  return drawn<Spell>(spells[season], hashFraction(seed, stream.spell, began));
}

function seasonOf(meanC: number): Season {
  if (meanC < 11) return 'cold';
  return meanC < 18 ? 'mild' : 'warm';
}

/** @param at - 0 to 1 of the way through the weights, which add up to 1. */
function drawn<T>(weights: Weights<T>, at: number): T {
  let sum = 0;
  let last: T | undefined;
  for (const [value, weight] of weights) {
    last = value;
    sum += weight;
    if (at < sum) break;
  }
  return last as T;
}
