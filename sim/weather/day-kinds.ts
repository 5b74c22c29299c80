/** What kinds of day there are. All numbers are invented scenery, chosen to try the controller. */
export const dayKinds = [
  'clear',
  'hazy',
  'broken',
  'overcast',
  'hot-still',
  'windy',
  'front-at-noon',
  'rainy',
  'snowy',
  'frost-night',
  'frost-wind',
  'frost-after-sun',
] as const;
export type DayKind = (typeof dayKinds)[number];

/** The weather of a part of a day; neighbours are blended number by number. */
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
  /** Rain or snow, as water, while a shower is at its heaviest [mm/h]. */
  readonly showerMmH: number;
}

/** A kind of day, and what it turns into at an hour, if it does. */
export interface DayPlan {
  readonly start: DayCharacter;
  readonly turn?: { readonly solarHour: number; readonly takesH: number; readonly into: DayCharacter };
  /** The mean air temperature is never above this, so that a frost comes when asked for in summer [°C]. */
  readonly meanAtMostC?: number;
}

const clear: DayCharacter = {
  clearnessFraction: 1,
  throughCloudFraction: 1,
  cloudFraction: 0,
  warmerK: 1.5,
  swingK: 4.5,
  drynessK: 7,
  windMs: 2.2,
  showerMmH: 0,
};
const broken: DayCharacter = {
  ...clear,
  throughCloudFraction: 0.28,
  cloudFraction: 0.5,
  warmerK: 0,
  swingK: 3,
  drynessK: 4,
  windMs: 4,
};
const overcast: DayCharacter = {
  ...clear,
  clearnessFraction: 0.6,
  throughCloudFraction: 0.4,
  cloudFraction: 1,
  warmerK: -1.5,
  swingK: 1.2,
  drynessK: 1.5,
  windMs: 5,
};
const rainy: DayCharacter = {
  ...overcast,
  throughCloudFraction: 0.27,
  drynessK: 0.8,
  windMs: 6,
  showerMmH: 1.8,
};
const frost: DayCharacter = { ...clear, warmerK: -9, swingK: 5.5, drynessK: 9, windMs: 0.8 };

export const dayPlans: Readonly<Record<DayKind, DayPlan>> = {
  clear: { start: clear },
  hazy: {
    start: {
      ...clear,
      clearnessFraction: 0.78,
      throughCloudFraction: 0.8,
      cloudFraction: 0.3,
      warmerK: 1,
      swingK: 3.5,
      drynessK: 4,
      windMs: 1.6,
    },
  },
  broken: { start: broken },
  overcast: { start: overcast },
  'hot-still': {
    start: { ...clear, clearnessFraction: 0.95, warmerK: 7, swingK: 6, drynessK: 6, windMs: 0.6 },
  },
  windy: { start: { ...broken, cloudFraction: 0.35, warmerK: -1, drynessK: 6, windMs: 9 } },
  'front-at-noon': {
    start: { ...clear, windMs: 3 },
    turn: { solarHour: 12, takesH: 1, into: { ...rainy, warmerK: -5, windMs: 8 } },
  },
  rainy: { start: rainy },
  snowy: {
    start: { ...overcast, swingK: 1, drynessK: 0.8, windMs: 3, showerMmH: 1.2 },
    meanAtMostC: -2.5,
  },
  'frost-night': { start: frost, meanAtMostC: 3 },
  'frost-wind': { start: { ...frost, warmerK: -11, swingK: 4, windMs: 6 }, meanAtMostC: 0 },
  'frost-after-sun': {
    start: { ...frost, warmerK: -5, swingK: 9, windMs: 1 },
    turn: { solarHour: 18, takesH: 4, into: { ...frost, warmerK: -9, swingK: 9, windMs: 0.5 } },
    meanAtMostC: 6,
  },
};
