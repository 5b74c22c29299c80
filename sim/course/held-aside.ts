import type { Course, LoopShape, Place } from './place.ts';

const maritime: Place = {
  name: 'cool-maritime-aside',
  location: { latitudeDeg: 49.5, longitudeDeg: -19, elevationM: 40 },
};
const temperate: Place = {
  name: 'temperate-aside',
  location: { latitudeDeg: -41, longitudeDeg: -97, elevationM: 5 },
};
const warm: Place = {
  name: 'warm-dry-aside',
  location: { latitudeDeg: 30, longitudeDeg: -52, elevationM: 120 },
};

const shapes: readonly LoopShape[] = [
  {
    name: 'open-high',
    kind: 'open-high',
    wettedAreaM2: 8,
    waterDepthM: 0.05,
    flowLMin: 18,
    powerW: 45,
    storeL: 950,
    draw: 'wash-house',
  },
  {
    name: 'open-low',
    kind: 'open-low',
    wettedAreaM2: 7,
    waterDepthM: 0.035,
    flowLMin: 22,
    powerW: 60,
    storeL: 600,
    draw: 'hatchery',
  },
  {
    name: 'reservoir',
    kind: 'reservoir',
    wettedAreaM2: 15,
    waterDepthM: 0.045,
    flowLMin: 34,
    powerW: 75,
    storeL: 1500,
    draw: 'wash-house',
  },
];

/** Other days at other places with loops of other sizes, on which nothing was ever tuned. */
export const heldAside: Course = {
  name: 'held-aside',
  shapes,
  days: [
    { name: 'clear-july', place: maritime, date: '2033-07-09', kind: 'clear', seed: 511, storeC: 26 },
    { name: 'broken-may', place: maritime, date: '2033-05-21', kind: 'broken', seed: 512, storeC: 20 },
    {
      name: 'overcast-september',
      place: maritime,
      date: '2033-09-16',
      kind: 'overcast',
      seed: 513,
      storeC: 12,
    },
    { name: 'cold-april', place: maritime, date: '2033-04-12', kind: 'frost-night', seed: 514, storeC: 13 },
    { name: 'clear-october', place: temperate, date: '2033-10-28', kind: 'clear', seed: 521, storeC: 23 },
    {
      name: 'front-december',
      place: temperate,
      date: '2033-12-12',
      kind: 'front-at-noon',
      seed: 522,
      storeC: 28,
    },
    { name: 'hazy-february', place: temperate, date: '2033-02-08', kind: 'hazy', seed: 523, storeC: 30 },
    { name: 'windy-november', place: temperate, date: '2033-11-20', kind: 'windy', seed: 524, storeC: 22 },
    {
      name: 'frost-august',
      place: temperate,
      date: '2033-08-19',
      kind: 'frost-after-sun',
      seed: 525,
      storeC: 14,
    },
    { name: 'hot-june', place: warm, date: '2033-06-28', kind: 'hot-still', seed: 531, storeC: 23 },
    { name: 'hazy-november', place: warm, date: '2033-11-12', kind: 'hazy', seed: 532, storeC: 25 },
    { name: 'broken-april', place: warm, date: '2033-04-25', kind: 'broken', seed: 533, storeC: 30 },
  ],
};
