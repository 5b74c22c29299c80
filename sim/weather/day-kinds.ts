/** What kinds of day there are. All numbers are invented scenery, chosen to try the controller. */
export const dayKinds = ['clear', 'hazy', 'broken', 'overcast', 'frost-night'] as const;
export type DayKind = (typeof dayKinds)[number];

export interface DayCharacter {
  /** Share of clear-sky irradiance that comes through between clouds. */
  readonly clearnessFraction: number;
  /** Share of that which still comes through a cloud. */
  readonly throughCloudFraction: number;
  /** Share of the sky, and of the time, that is cloud. */
  readonly cloudFraction: number;
  /** Mean air temperature against the season's [K]. */
  readonly warmerK: number;
  /** Half the distance between the coldest and the warmest hour [K]. */
  readonly swingK: number;
  /** Dew point below the day's mean air temperature [K]. */
  readonly drynessK: number;
  readonly windMs: number;
}

export const dayCharacters: Readonly<Record<DayKind, DayCharacter>> = {
  clear: {
    clearnessFraction: 1,
    throughCloudFraction: 1,
    cloudFraction: 0,
    warmerK: 1.5,
    swingK: 4.5,
    drynessK: 7,
    windMs: 2.2,
  },
  hazy: {
    clearnessFraction: 0.78,
    throughCloudFraction: 0.8,
    cloudFraction: 0.3,
    warmerK: 1,
    swingK: 3.5,
    drynessK: 4,
    windMs: 1.6,
  },
  broken: {
    clearnessFraction: 1.02,
    throughCloudFraction: 0.28,
    cloudFraction: 0.5,
    warmerK: 0,
    swingK: 3,
    drynessK: 4,
    windMs: 4,
  },
  overcast: {
    clearnessFraction: 0.4,
    throughCloudFraction: 0.55,
    cloudFraction: 1,
    warmerK: -1.5,
    swingK: 1.2,
    drynessK: 1.5,
    windMs: 5,
  },
  'frost-night': {
    clearnessFraction: 1,
    throughCloudFraction: 1,
    cloudFraction: 0,
    warmerK: -9,
    swingK: 5.5,
    drynessK: 9,
    windMs: 0.8,
  },
};

/** How often a kind is drawn. Frost nights come only where the season is cold, or when asked for. */
export const dayWeights: readonly (readonly [DayKind, number])[] = [
  ['clear', 0.38],
  ['hazy', 0.2],
  ['broken', 0.28],
  ['overcast', 0.14],
];
