import { describe, expect, it } from 'vitest';
import { closeBooks, givenSites, partFaultNames } from '../../support/books.ts';

/**
 * Books of heat and water over a year. They close at any step, so that most of them take a minute at a time;
 * `npm run soak` takes ten seconds for every site under every fault.
 */
const year = { fromMs: Date.UTC(2031, 0, 1), days: 365, stepS: 60, weatherS: 600 };
/** From frost to midsummer: whatever a fault does, it does there. The command above takes the whole year. */
const halfYear = { ...year, days: 180 };
const siteNamed = (start: string) => {
  const [, site] = givenSites.find(([name]) => name.startsWith(start)) ?? [];
  if (site === undefined) throw new Error(`no site is called ${start}`);
  return site;
};
const demo = siteNamed('quillhaven');

describe('books over a year', () => {
  it.each(givenSites)('%s', (_, site) => {
    const { heatFraction, waterFraction, account } = closeBooks(site, year);
    expect(account.gainJ).toBeGreaterThan(1e9);
    expect(heatFraction).toBeLessThan(1e-9);
    expect(waterFraction).toBeLessThan(1e-9);
  });

  it('the demo at a step of 10 s', () => {
    const { heatFraction, waterFraction } = closeBooks(demo, { ...year, stepS: 10, weatherS: 10 });
    expect(heatFraction).toBeLessThan(1e-9);
    expect(waterFraction).toBeLessThan(1e-9);
  }, 180_000);
});

describe('books over half a year under a fault', () => {
  // A loop without a heat dump has none that could stick.
  const here = partFaultNames.filter((fault) => fault !== 'dump-stuck-off');
  const faulty = here.flatMap((fault) =>
    [demo, siteNamed('fennick-holm')].map((site) => [fault, site.name, site] as const),
  );
  it.each(faulty)('%s at %s', (fault, _, site) => {
    const { heatFraction, waterFraction } = closeBooks(site, { ...halfYear, fault });
    expect(heatFraction).toBeLessThan(1e-9);
    expect(waterFraction).toBeLessThan(1e-9);
  });
});

describe('a step of half the length', () => {
  const homeJ = (stepS: number, fromMs: number) => closeBooks(demo, { fromMs, days: 1, stepS }).account.homeJ;
  it.each([3, 15, 27])('changes the heat of day %d of June by less than half a percent', (day) => {
    const fromMs = Date.UTC(2031, 5, day, 2);
    const whole = homeJ(10, fromMs);
    expect(whole).toBeGreaterThan(1e7);
    expect(Math.abs(homeJ(5, fromMs) / whole - 1)).toBeLessThan(0.005);
    expect(Math.abs(homeJ(2.5, fromMs) / homeJ(5, fromMs) - 1)).toBeLessThan(0.005);
  });
});
