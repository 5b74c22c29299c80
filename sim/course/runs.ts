import type { Site } from '../../shared-types/site.ts';
import { createPlant, type PlantState } from '../plant/state.ts';
import { createWeather, type Weather } from '../weather/weather.ts';
import { siteOf } from './loops.ts';
import type { Course, CourseDay, LoopShape } from './place.ts';

/** One loop on one day, from before dawn for a day and a night; every policy meets the same one. */
export interface Run {
  /** Such as clear-june/open-high. */
  readonly name: string;
  readonly site: Site;
  readonly weather: Weather;
  /** Clear days at the same place, on which a controller may get to know the loop beforehand. */
  readonly fairWeather: Weather;
  readonly seed: number;
  readonly fromMs: number;
  readonly toMs: number;
  /** A plant as it stands when the day begins: the loop empty, the store at its stated temperature. */
  plant(): PlantState;
}

const hourMs = 3_600_000;
const runHours = 24;
/** Mean solar time at which a run begins. */
const beginsAtHour = 4;

/** Every day of a course with every loop. */
export function runsOf(course: Course): readonly Run[] {
  const sites = new Map<string, Site>();
  return course.days.flatMap((day) =>
    course.shapes.map((shape, number) => {
      const key = `${day.place.name}/${shape.name}`;
      const site = sites.get(key) ?? siteOf(shape, day.place);
      sites.set(key, site);
      return runOf(day, shape, site, 10 * day.seed + number);
    }),
  );
}

function runOf(day: CourseDay, shape: LoopShape, site: Site, seed: number): Run {
  const { location } = day.place;
  const weather = createWeather({ location, seed: day.seed, kinds: [day.kind] });
  const solarNoughtMs = Date.parse(`${day.date}T00:00:00Z`) - (location.longitudeDeg / 15) * hourMs;
  const fromMs = solarNoughtMs + beginsAtHour * hourMs;
  return {
    name: `${day.name}/${shape.name}`,
    site,
    weather,
    fairWeather: createWeather({ location, seed: day.seed, kinds: ['clear'] }),
    seed,
    fromMs,
    toMs: fromMs + runHours * hourMs,
    plant: () => createPlant(site, { waterC: day.storeC, panC: weather.at(fromMs).airC, draw: shape.draw }),
  };
}
