import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { formatSiteFault, readCheckedFile, readSiteFile } from '../../controller/site-file.ts';
import type { Site } from '../../shared-types/site.ts';
import { checkWish, type FaultWish, misfitOf } from '../device/fault-text.ts';
import { instantOf, parseStart } from '../device/local-moment.ts';
import type { Traits } from '../plant/traits.ts';
import type { DayKind } from '../weather/day-kinds.ts';
import { readEpw } from '../weather/epw.ts';
import { createWeather, type Weather } from '../weather/weather.ts';
import { readWeatherCsv, type WeatherCsvMap } from '../weather/weather-csv.ts';
import type { WeatherFile } from '../weather/weather-file.ts';
import { repairText, weatherFaultText } from '../weather/weather-file-text.ts';
import type { Scenario } from './scenario.ts';
import { type ScenarioContent, scenarioSchema } from './schema.ts';

/** What takes the place of what the file says. */
export interface ScenarioChanges {
  readonly siteFile?: string;
  readonly seed?: number;
  readonly kinds?: readonly DayKind[];
}

type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly string[] };

/** Reads a scenario file with all that it names. Never throws; each fault is a line for a person. */
export function readScenario(path: string, changes: ScenarioChanges = {}): Read<Scenario> {
  const read = readScenarioFile(path);
  if (!read.ok) return read;
  const content = read.value;
  const beside = (file: string) => resolve(dirname(path), file);
  const siteRead = readSiteFile(changes.siteFile ?? beside(content.site));
  if (!siteRead.ok) return { ok: false, faults: siteRead.faults.map(formatSiteFault) };
  const { site } = siteRead;
  const seed = changes.seed ?? content.seed;
  const weather = weatherOf(content, changes.kinds, seed, site, beside);
  if (!weather.ok) return weather;
  const faults = content.faults.flatMap((fault, index) => {
    const misfit = misfitOf(fault as FaultWish['fault'], site, site.link.kind === 'serial');
    return misfit === undefined ? [] : [`${path}: faults.${index}: ${misfit}`];
  });
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: scenarioOf(content, site, seed, weather.value) };
}

/** Reads and checks the file alone, not what it names. */
export function readScenarioFile(path: string): Read<ScenarioContent> {
  const read = readCheckedFile(path, {
    schema: scenarioSchema,
    keys: 'the keys of a scenario, such as title and site',
  });
  return read.ok
    ? { ok: true, value: read.content }
    : { ok: false, faults: read.faults.map(formatSiteFault) };
}

interface ReadWeather {
  readonly weather: Weather;
  readonly repairs: readonly string[];
}

function scenarioOf(content: ScenarioContent, site: Site, seed: number, read: ReadWeather): Scenario {
  const { water, startsAt } = content;
  const { weather, repairs } = read;
  const start = startsAt === undefined ? undefined : parseStart(startsAt);
  const setup = { traits: given(content.traits), draw: content.draw.profile };
  return {
    title: content.title,
    site,
    seed,
    weather,
    repairs,
    startMs: start === undefined ? undefined : instantOf(start, 0, site.timeZone),
    setup,
    plantOptions: (atMs) => ({
      ...setup,
      waterC: water.storeC,
      panC: water.panC ?? weather.at(atMs).airC,
      panFull: water.panFull,
    }),
    exactSensors: content.exactSensors,
    wishes: content.faults.flatMap((fault) => {
      const wish = checkWish(fault);
      return wish.ok ? [wish.value] : [];
    }),
  };
}

/** Without the keys that are there but undefined: they would hide the usual values. */
function given(traits: ScenarioContent['traits']): Partial<Traits> {
  return Object.fromEntries(Object.entries(traits).filter(([, value]) => value !== undefined));
}

function weatherOf(
  { weather: { kinds: own, epw, csv, map }, startsAt }: ScenarioContent,
  other: readonly DayKind[] | undefined,
  seed: number,
  site: Site,
  beside: (file: string) => string,
): Read<ReadWeather> {
  const { location } = site;
  if (other === undefined && epw !== undefined)
    return weatherFile(beside(epw), (text) => readEpw(text, location));
  if (other === undefined && csv !== undefined)
    return weatherFile(beside(csv), (text) => readWeatherCsv(text, map as WeatherCsvMap, location));
  const kinds = other ?? own;
  const turned = kinds === undefined ? {} : { kinds: turnedTo(firstDay(startsAt, site), kinds) };
  const weather = createWeather({ location, seed, ...turned });
  return { ok: true, value: { weather, repairs: [] } };
}

/** Number of the solar day that holds the noon of the first local day; 0 when any day may be the first. */
function firstDay(startsAt: string | undefined, { timeZone, location }: Site): number {
  const start = startsAt === undefined ? undefined : parseStart(startsAt);
  if (start === undefined) return 0;
  const noonMs = instantOf({ ...start, minuteOfDay: 720 }, 0, timeZone);
  return Math.floor((noonMs + (location.longitudeDeg / 15) * 3_600_000) / 86_400_000);
}

/** Weather counts its kinds from the day with number 0 on; a scenario from its first day. */
function turnedTo(day: number, kinds: readonly DayKind[]): DayKind[] {
  const { length } = kinds;
  return kinds.map((_, index) => kinds[(((index - day) % length) + length) % length] as DayKind);
}

function weatherFile(path: string, read: (text: string) => WeatherFile): Read<ReadWeather> {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return { ok: false, faults: [`${path}: the weather file cannot be read`] };
  }
  const file = read(text);
  if (!file.ok)
    return { ok: false, faults: file.faults.map((fault) => `${path}: ${weatherFaultText(fault)}`) };
  const { weather, repairs } = file.value;
  return { ok: true, value: { weather, repairs: repairs.map((repair) => `${path}: ${repairText(repair)}`) } };
}
