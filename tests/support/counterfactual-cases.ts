import { defaultSettings, type Settings, settingsSchema } from '../../shared-types/settings.ts';
import { type Site, siteSchema } from '../../shared-types/site.ts';
import { siteOf } from '../../sim/course/loops.ts';
import type { LoopShape, Place } from '../../sim/course/place.ts';
import { drawProfiles } from '../../sim/plant/draws.ts';
import { createPlant } from '../../sim/plant/state.ts';
import type { Traits } from '../../sim/plant/traits.ts';
import { hashFraction } from '../../sim/weather/random.ts';
import { createWeather } from '../../sim/weather/weather.ts';
import { type LoggedLoop, loggedLoop } from './logged-loop.ts';

/** A drawn loop at a drawn place with drawn traits, logged over some days, and settings that it is then tried under. */
export interface CounterfactualCase {
  readonly name: string;
  readonly site: Site;
  readonly traits: Partial<Traits>;
  readonly settings: Settings;
  readonly tried: Settings;
  readonly logged: LoggedLoop;
}

export type SensorSet = 'full' | 'least';

const stream = 900;
const dayMs = 86_400_000;
const kinds = ['open-high', 'open-low', 'reservoir'] as const;

/** Further sensors of a loop that has all; what is left of a loop that has the least. */
const weatherSensors = {
  irradianceWM2: { key: 'irradianceWM2', unit: 'W/m2' },
  windMs: { key: 'windMs', unit: 'm/s' },
  ambientC: { key: 'ambientC', unit: 'C' },
  humidityFraction: { key: 'humidityFraction', unit: 'fraction' },
  flowLMin: { key: 'flowLMin', unit: 'L/min' },
} as const;
const leastSensors = ['panSheetC', 'storeBottomC'] as const;

/** The same number gives the same case. */
export function counterfactualCase(seed: number, sensors: SensorSet, days = 5): CounterfactualCase {
  let draws = 0;
  const draw = () => hashFraction(seed, stream, draws++);
  const between = (least: number, most: number) => least + (most - least) * draw();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)] as T;

  const place: Place = {
    name: 'drawn',
    location: {
      latitudeDeg: (draw() < 0.7 ? 1 : -1) * between(28, 54),
      longitudeDeg: between(-40, -20),
      elevationM: between(0, 200),
    },
  };
  const wettedAreaM2 = Math.round(between(4, 20));
  const kind = pick(kinds);
  const shape: LoopShape = {
    name: kind,
    kind,
    wettedAreaM2,
    waterDepthM: between(0.03, 0.05),
    flowLMin: Math.round(wettedAreaM2 * between(1.8, 3)),
    powerW: 60,
    storeL: Math.round(wettedAreaM2 * between(70, 130)),
    draw: pick(drawProfiles.filter((profile) => profile !== 'none')),
  };
  const site = sensed(siteOf(shape, place), sensors);
  const traits: Partial<Traits> = {
    opticalEfficiency: between(0.85, 0.96),
    windOpticalSM: between(0.01, 0.04),
    stillLossWM2K: between(8, 15),
    windLossJM3K: between(2, 5),
    contactWM2K: between(180, 320),
    insulationWM2K: between(0.7, 1.5),
    pipeLossWMK: between(0.15, 0.4),
    drawnStoreFraction: between(0.3, 0.9),
    makeUpC: between(9, 17),
  };
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const tried = { ...settings, ...changeOf(draw, pick, between) };
  const fromMs = Date.parse('2034-01-01T00:00:00Z') + Math.floor(between(90, 300)) * dayMs;
  const weather = createWeather({ location: place.location, seed });
  const plant = createPlant(site, {
    traits,
    draw: shape.draw,
    waterC: between(15, 30),
    panC: weather.at(fromMs).airC,
  });
  const logged = loggedLoop({ site, settings, plant, weather, seed, fromMs, days });
  return { name: `${seed} ${kind} ${sensors}`, site, traits, settings, tried, logged };
}

/** Settings that matter to the heat, one or two at once. */
function changeOf(
  draw: () => number,
  pick: <T>(list: readonly T[]) => T,
  between: (least: number, most: number) => number,
): Partial<Settings> {
  const changes: (() => Partial<Settings>)[] = [
    () => {
      const startDifferenceK = between(4, 12);
      return { startDifferenceK, stopDifferenceK: between(0.5, startDifferenceK - 1) };
    },
    () => ({ fillDifferenceK: between(8, 30) }),
    () => ({ stopDelayS: between(0, 300), emptyAfterMin: between(10, 60) }),
    () => ({ storeLimitC: between(30, 45) }),
    () => ({ batchRunning: 1, batchTemperatureC: between(25, 38) }),
  ];
  const first = pick(changes)();
  return draw() < 0.5 ? first : { ...first, ...pick(changes)() };
}

function sensed(site: Site, sensors: SensorSet): Site {
  const own =
    sensors === 'full'
      ? { ...site.sensors, ...weatherSensors }
      : Object.fromEntries(leastSensors.map((channel) => [channel, site.sensors[channel]]));
  return siteSchema.parse({ ...site, sensors: own });
}
