import type { Course, LoopShape, Place } from './place.ts';

const maritime: Place = {
  name: 'cool-maritime',
  location: { latitudeDeg: 52, longitudeDeg: -31, elevationM: 10 },
};
const temperate: Place = {
  name: 'temperate',
  location: { latitudeDeg: 44, longitudeDeg: -26, elevationM: 25 },
};
const warm: Place = { name: 'warm-dry', location: { latitudeDeg: 33, longitudeDeg: -38, elevationM: 60 } };

const shapes: readonly LoopShape[] = [
  {
    name: 'open-high',
    kind: 'open-high',
    wettedAreaM2: 12,
    waterDepthM: 0.04,
    flowLMin: 24,
    powerW: 60,
    storeL: 1200,
    draw: 'wash-house',
  },
  {
    name: 'open-low',
    kind: 'open-low',
    wettedAreaM2: 5,
    waterDepthM: 0.03,
    flowLMin: 16,
    powerW: 45,
    storeL: 500,
    draw: 'wash-house',
  },
  {
    name: 'reservoir',
    kind: 'reservoir',
    wettedAreaM2: 20,
    waterDepthM: 0.04,
    flowLMin: 40,
    powerW: 90,
    storeL: 2400,
    draw: 'nursery',
  },
];

/** The days on which the control is tried while it is being made. Invented scenery. */
export const course: Course = {
  name: 'course',
  shapes,
  days: [
    { name: 'clear-june', place: maritime, date: '2031-06-21', kind: 'clear', seed: 11, storeC: 22 },
    { name: 'broken-july', place: maritime, date: '2031-07-18', kind: 'broken', seed: 12, storeC: 24 },
    { name: 'overcast-october', place: maritime, date: '2031-10-04', kind: 'overcast', seed: 13, storeC: 11 },
    { name: 'cold-april', place: maritime, date: '2031-04-08', kind: 'frost-night', seed: 14, storeC: 16 },
    { name: 'clear-may', place: temperate, date: '2031-05-15', kind: 'clear', seed: 21, storeC: 27 },
    { name: 'front-june', place: temperate, date: '2031-06-10', kind: 'front-at-noon', seed: 22, storeC: 25 },
    { name: 'hazy-august', place: temperate, date: '2031-08-20', kind: 'hazy', seed: 23, storeC: 32 },
    { name: 'windy-september', place: temperate, date: '2031-09-20', kind: 'windy', seed: 24, storeC: 24 },
    {
      name: 'frost-november',
      place: temperate,
      date: '2031-11-05',
      kind: 'frost-after-sun',
      seed: 25,
      storeC: 15,
    },
    { name: 'hot-july', place: warm, date: '2031-07-25', kind: 'hot-still', seed: 31, storeC: 21 },
    { name: 'clear-december', place: warm, date: '2031-12-15', kind: 'clear', seed: 32, storeC: 24 },
    { name: 'broken-march', place: warm, date: '2031-03-15', kind: 'broken', seed: 33, storeC: 26 },
  ],
};
