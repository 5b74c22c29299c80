import { describe, expect, it } from 'vitest';
import { createPlant } from '../../../../sim/plant/state.ts';
import { spanText } from '../../../../sim/simulate/report-text.ts';
import { type SpanReport, simulateSpan } from '../../../../sim/simulate/span.ts';
import { createWeather } from '../../../../sim/weather/weather.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const site = siteOf(demoContent());
const simulate = (more: { seed?: number; days?: number; onDay?: (day: number) => void } = {}): SpanReport => {
  const { seed = 4, days = 4, onDay } = more;
  return simulateSpan({
    site,
    plant: createPlant(site, { waterC: 20, panC: 15 }),
    weather: createWeather({ location: site.location, seed, kinds: ['clear', 'broken'] }),
    seed,
    fromMs: Date.UTC(2031, 5, 29, 3),
    days,
    stepS: 10,
    ...(onDay === undefined ? {} : { onDay }),
  });
};

describe('a simulated span', () => {
  const report = simulate();

  it('counts each local month, and all of them', () => {
    expect(report.months.map(({ month }) => month)).toEqual(['2031-06', '2031-07']);
    expect(report.all.days).toBeCloseTo(4, 6);
    for (const key of [
      'days',
      'sunKWhM2',
      'homeKWh',
      'drawnKWh',
      'electricityKWh',
      'fills',
      'starts',
    ] as const)
      expect(
        report.months.reduce((sum, month) => sum + month[key], 0),
        key,
      ).toBeCloseTo(report.all[key], 6);
  });

  it('brings home a believable share of the sun', () => {
    const share = report.all.homeKWh / (12 * report.all.sunKWhM2);
    expect(share).toBeGreaterThan(0.1);
    expect(share).toBeLessThan(0.8);
    expect(report.all.fills).toBeGreaterThan(0);
    expect(report.all.mostIceKg).toBe(0);
  });

  it('closes its books', () => {
    expect(report.unexplainedHeatFraction).toBeLessThan(1e-9);
    expect(report.unexplainedWaterFraction).toBeLessThan(1e-9);
  });

  it('is the same for the same seed, to the last bit', () => {
    expect(simulate()).toEqual(report);
    expect(simulate({ seed: 5 })).not.toEqual(report);
  });

  it('tells of every day that is done', () => {
    const days: number[] = [];
    simulate({ days: 3, onDay: (day) => days.push(day) });
    expect(days).toEqual([1, 2, 3]);
  });

  it('is told in a table with a line a month', () => {
    const text = spanText(report);
    expect(text).toContain('4 simulated days');
    expect(text).toMatch(/^2031-06 .*\n2031-07 .*\nall /m);
  });
});
