import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { defaultSettings, settingsSchema } from '../../shared-types/settings.ts';
import { type Site, siteSchema } from '../../shared-types/site.ts';
import type { LoopFit } from '../../shared-types/tuning.ts';
import { fitDays } from '../../sim/identify/fit-days.ts';
import { traitUnknowns } from '../../sim/identify/model/unknowns.ts';
import { errorForLife } from '../../sim/plant/sensors.ts';
import { createPlant } from '../../sim/plant/state.ts';
import { type TraitName, usualTraits } from '../../sim/plant/traits.ts';
import { hashFraction } from '../../sim/weather/random.ts';
import { createWeather } from '../../sim/weather/weather.ts';
import { loggedLoop } from './logged-loop.ts';

/** One parameter of a twin: what was found, and what the plant that made the log really had. */
export interface TwinParameter {
  readonly name: string;
  readonly value: number;
  readonly standardError: number;
  readonly truth: number;
  /** Found less true, in standard errors. */
  readonly z: number;
}

export interface Twin {
  readonly fit: LoopFit;
  /** The fitted ones; held ones have no interval. */
  readonly parameters: readonly TwinParameter[];
  /** What the sensors show wrong. */
  readonly sensors: readonly TwinParameter[];
}

export interface TwinTask {
  readonly seed: number;
  /** Days that are fitted together, after one in which the loop settles. */
  readonly days: number;
  /** What the site file says wrongly: the loop that is logged has this instead. */
  readonly asBuilt?: (site: Site) => Site;
}

const stream = 901;
const dayMs = 86_400_000;
const path = 'sim/scenarios/quillhaven-wash-house.yaml';
const scenario = siteSchema.parse(parse(readFileSync(path, 'utf8')));
/** In UTC, and with steps of ten seconds, so that plant and log have other steps than a fit. */
const site = siteSchema.parse({
  ...scenario,
  timeZone: 'Etc/UTC',
  control: { ...scenario.control, stepS: 10 },
});

/** Logs a loop with drawn traits, sensors and days, and fits it. The same number gives the same twin. */
export function twinOf({ seed, days, asBuilt = (declared) => declared }: TwinTask): Twin {
  let draws = 0;
  const draw = () => hashFraction(seed, stream, draws++);
  // Even over the ranges in which a fit looks.
  const traits = Object.fromEntries(
    traitUnknowns(site, true).map(({ key, mean, sd }) => [key, mean + Math.sqrt(3) * sd * (2 * draw() - 1)]),
  );
  const fromMs = Date.parse('2034-01-01T00:00:00Z') + Math.floor(90 + 200 * draw()) * dayMs;
  const weather = createWeather({ location: site.location, seed });
  const plant = createPlant(asBuilt(site), {
    traits,
    waterC: 15 + 15 * draw(),
    panC: weather.at(fromMs).airC,
  });
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const log = loggedLoop({ site, settings, plant, weather, seed, fromMs, days: days + 1 });
  const fitted = fitDays(log.reader, log.days.slice(1));
  if (!fitted.ok) throw new Error(fitted.why.join('; '));
  const { fit } = fitted;
  const parameters = fit.parameters.flatMap(({ name, value, standardError }) =>
    standardError === null
      ? []
      : [foundOf(name, value, standardError, traits[name] ?? usualTraits[name as TraitName])],
  );
  const sensors = fit.sensorErrors.map(({ channel, kind, value, standardError }) =>
    foundOf(`${channel} ${kind}`, value, standardError, errorForLife(channel, seed)[kind]),
  );
  return { fit, parameters, sensors };
}

const foundOf = (name: string, value: number, standardError: number, truth: number): TwinParameter => ({
  ...{ name, value, standardError, truth },
  z: (value - truth) / standardError,
});

/** Within a 95 % interval. */
export const covers = ({ z }: TwinParameter) => Math.abs(z) <= 1.96;
