import { readdirSync } from 'node:fs';
import { readSiteFile } from '../../controller/site-file.ts';
import type { Site } from '../../shared-types/site.ts';
import { type Account, openBooks, unexplainedJ, unexplainedKg } from '../../sim/plant/account.ts';
import { advance } from '../../sim/plant/advance.ts';
import { declarationOf, type FaultName, faultNames } from '../../sim/plant/faults.ts';
import { createPlant } from '../../sim/plant/state.ts';
import { createWeather } from '../../sim/weather/weather.ts';
import { emptying, pumping } from './plants.ts';

const folder = 'sim/scenarios';

/** Every site that comes with the project, by the name of its file. */
export const givenSites: readonly (readonly [string, Site])[] = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => {
    const read = readSiteFile(`${folder}/${name}`);
    if (!read.ok) throw new Error(`${name} is not a site file`);
    return [name, read.site];
  });

export const partFaultNames = faultNames.filter((name) => declarationOf(name).on === 'part');

export interface Span {
  readonly fromMs: number;
  readonly days: number;
  readonly stepS: number;
  /** How long a look at the weather is held; a step when absent. Books close under any weather. */
  readonly weatherS?: number;
  readonly fault?: FaultName;
}

export interface Closing {
  /** What the books cannot explain, over what was turned over. */
  readonly heatFraction: number;
  readonly waterFraction: number;
  readonly account: Account;
}

/** Runs a loop full by day and empty by night, and closes its books. */
export function closeBooks(site: Site, { fromMs, days, stepS, weatherS = stepS, fault }: Span): Closing {
  const plant = createPlant(site, { waterC: 20, panC: 10 });
  const weather = createWeather({ location: site.location, seed: 9 });
  const books = openBooks(plant);
  const { account } = books;
  const size = fault === undefined ? 0 : (declarationOf(fault).size?.default ?? 0);
  let conditions = weather.at(fromMs);
  for (let s = 0; s < days * 86_400; s += stepS) {
    if (s % weatherS === 0) conditions = weather.at(fromMs + s * 1000);
    const byDay = conditions.solarHour > 8 && conditions.solarHour < 16;
    const faults = fault === undefined ? [] : [{ name: fault, size, forS: s }];
    advance(plant, byDay ? pumping : emptying, conditions, stepS, faults, account);
  }
  const turnoverJ =
    Math.abs(account.gainJ) + Math.abs(account.airJ) + account.drawnJ + account.madeUpJ + books.heldJ;
  const turnoverKg = account.drawnKg + account.leakedKg + books.heldKg;
  return {
    heatFraction: Math.abs(unexplainedJ(books, plant)) / turnoverJ,
    waterFraction: Math.abs(unexplainedKg(books, plant)) / turnoverKg,
    account,
  };
}
