import type { Site } from '../../shared-types/site.ts';
import type { FaultWish } from '../device/fault-text.ts';
import type { PlantSetup } from '../plant/parts.ts';
import type { PlantOptions } from '../plant/state.ts';
import type { DayKind } from '../weather/day-kinds.ts';
import { createWeather, type Weather } from '../weather/weather.ts';

/** All that a simulated loop needs in order to live. */
export interface Scenario {
  readonly title: string;
  readonly site: Site;
  readonly seed: number;
  readonly weather: Weather;
  /** What was mended in its weather file, in words. */
  readonly repairs: readonly string[];
  /** Where its calendar begins [UTC ms]; undefined: wherever it is begun. */
  readonly startMs: number | undefined;
  /** The loop's parts beyond its site file. */
  readonly setup: PlantSetup;
  /** The loop as it stands when it begins at an instant [UTC ms]. */
  plantOptions(atMs: number): PlantOptions;
  readonly exactSensors: boolean;
  readonly wishes: readonly FaultWish[];
}

const usualStoreC = 22;

/** A loop of which only the site file is known. */
export function plainScenario(site: Site, seed: number, kinds?: readonly DayKind[]): Scenario {
  const weather = createWeather({ location: site.location, seed, ...(kinds === undefined ? {} : { kinds }) });
  return {
    title: site.title,
    site,
    seed,
    weather,
    repairs: [],
    startMs: undefined,
    setup: {},
    plantOptions: (atMs) => ({ waterC: usualStoreC, panC: weather.at(atMs).airC }),
    exactSensors: false,
    wishes: [],
  };
}
