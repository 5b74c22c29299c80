import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSiteFile } from '../../../controller/site-file.ts';
import type { Site } from '../../../shared-types/site.ts';
import { openBooks, unexplainedJ, unexplainedKg } from '../../../sim/plant/account.ts';
import { advance } from '../../../sim/plant/advance.ts';
import { declarationOf, type FaultName, faultNames } from '../../../sim/plant/faults.ts';
import { createPlant } from '../../../sim/plant/state.ts';
import { createWeather } from '../../../sim/weather/weather.ts';
import { emptying, pumping } from '../../support/plants.ts';

/**
 * Books of energy and water over a year at a step of 10 s, for every site that comes with the project, under
 * a fixed rule of running; and over some winter and summer days for every fault of a part.
 */
const folder = 'sim/scenarios';
const sites = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name): readonly [string, Site] => {
    const read = readSiteFile(`${folder}/${name}`);
    if (!read.ok) throw new Error(`${name} is not a site file`);
    return [name, read.site];
  });
const newYearMs = Date.UTC(2031, 0, 1);

/** @returns what the books cannot explain, over what was turned over. */
function unexplained(site: Site, fromMs: number, days: number, fault?: FaultName) {
  const plant = createPlant(site, { waterC: 20, panC: 10 });
  const weather = createWeather({ location: site.location, seed: 9 });
  const books = openBooks(plant);
  const { account } = books;
  const size = fault === undefined ? 0 : (declarationOf(fault).size?.default ?? 0);
  for (let s = 0; s < days * 86_400; s += 10) {
    const conditions = weather.at(fromMs + s * 1000);
    const byDay = conditions.solarHour > 8 && conditions.solarHour < 16;
    const faults = fault === undefined ? [] : [{ name: fault, size, forS: s }];
    advance(plant, byDay ? pumping : emptying, conditions, 10, faults, account);
  }
  const turnoverJ =
    Math.abs(account.gainJ) + Math.abs(account.airJ) + account.drawnJ + account.madeUpJ + books.heldJ;
  const turnoverKg = account.drawnKg + account.leakedKg + books.heldKg;
  return {
    heat: Math.abs(unexplainedJ(books, plant)) / turnoverJ,
    water: Math.abs(unexplainedKg(books, plant)) / turnoverKg,
    account,
  };
}

describe('books over a year', () => {
  it.each(sites)('%s', (_, site) => {
    const { heat, water, account } = unexplained(site, newYearMs, 365);
    expect(account.gainJ).toBeGreaterThan(1e9);
    expect(heat).toBeLessThan(1e-9);
    expect(water).toBeLessThan(1e-9);
  }, 180_000);
});

describe('books under a fault', () => {
  const parts = faultNames.filter((name) => declarationOf(name).on === 'part');
  describe.each(sites)('%s', (_, site) => {
    it.each(parts)('%s, in winter and in summer', (fault) => {
      for (const dayOfYear of [20, 180]) {
        const { heat, water } = unexplained(site, newYearMs + dayOfYear * 86_400_000, 2, fault);
        expect(heat).toBeLessThan(1e-9);
        expect(water).toBeLessThan(1e-9);
      }
    });
  });
});

describe('a step of half the length', () => {
  const site = sites.find(([name]) => name.startsWith('quillhaven'))?.[1];
  const homeJ = (stepS: number, kind: 'clear' | 'broken') => {
    if (site === undefined) throw new Error('the demo is not there');
    const plant = createPlant(site, { waterC: 22, panC: 15 });
    const weather = createWeather({ location: site.location, seed: 2, kinds: [kind] });
    const { account } = openBooks(plant);
    for (let s = 0; s < 86_400; s += stepS) {
      const conditions = weather.at(Date.UTC(2031, 5, 21, 2) + (s + stepS) * 1000);
      const byDay = conditions.solarHour > 8 && conditions.solarHour < 16;
      advance(plant, byDay ? pumping : emptying, conditions, stepS, [], account);
    }
    return account.homeJ;
  };
  it.each(['clear', 'broken'] as const)(
    'changes the heat of a %s day by less than half a percent',
    (kind) => {
      const whole = homeJ(10, kind);
      expect(whole).toBeGreaterThan(3e7);
      expect(Math.abs(homeJ(5, kind) / whole - 1)).toBeLessThan(0.005);
      expect(Math.abs(homeJ(2.5, kind) / homeJ(5, kind) - 1)).toBeLessThan(0.005);
    },
  );
});
