import { resolve } from 'node:path';
import { initialState } from '../../../controller/engine/index.ts';
import { readSiteFile } from '../../../controller/site-file.ts';
import type { EngineInput } from '../../../shared-types/engine.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { createLoop } from '../../../sim/loop.ts';
import { createPlant } from '../../../sim/plant/state.ts';
import { createWeather } from '../../../sim/weather/weather.ts';

export interface RecordedDay {
  readonly site: Site;
  readonly settings: Settings;
  readonly inputs: readonly EngineInput[];
}

const dayS = 86_400;
const stepS = 30;
const seed = 6;
/** Early spring: there is something to gain by day, and frost by night. */
const fromMs = Date.parse('2031-03-20T07:00:00Z');

/** A day under broken cloud and the night of frost after it, as sensors with their errors tell it. */
export function recordDay(siteName: string): RecordedDay {
  const read = readSiteFile(resolve('sim/scenarios', `${siteName}.yaml`));
  if (!read.ok) throw new Error(`${siteName} is not a site file`);
  const { site } = read;
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const weather = createWeather({ location: site.location, seed, kinds: ['broken', 'frost-night'] });
  const plant = createPlant(site, { waterC: 18, panC: weather.at(fromMs).airC });
  const loop = createLoop({ site, settings, plant, weather, seed, state: initialState() });
  const inputs: EngineInput[] = [];
  for (let s = 0; s <= dayS; s += stepS) inputs.push(loop.step(fromMs + s * 1000).input);
  return { site, settings, inputs };
}
