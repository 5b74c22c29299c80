import { describe, expect, test } from 'vitest';
import { opticalFraction } from '../../../../../sim/physics/collector.ts';
import { type TraitName, traitDeclarations } from '../../../../../sim/plant/traits.ts';
import { compareDay } from '../../../../../sim/replay/live-again/compare-day.ts';
import { comparisonText } from '../../../../../sim/replay/live-again/report-text.ts';
import { createWeather } from '../../../../../sim/weather/weather.ts';
import { counterfactualCase, type SensorSet } from '../../../../support/counterfactual-cases.ts';

const seed = 2;

function lived(sensors: SensorSet, samples: number) {
  const one = counterfactualCase(seed, sensors, 2);
  const day = one.logged.days.at(-1) as string;
  const comparison = compareDay(one.logged.reader, day, one.settings, { fit: null, samples, seed: 7 });
  if (comparison === undefined) throw new Error('nobody gave it up');
  return { one, comparison };
}

const { one, comparison } = lived('least', 12);

/** What a square metre truly took up in a step [W/m2]. */
function trueWM2(fromMs: number, stepMs: number): number {
  const weather = createWeather({ location: one.site.location, seed });
  const usual = (name: TraitName) => one.traits[name] ?? traitDeclarations[name].default;
  const collector = {
    opticalEfficiency: usual('opticalEfficiency'),
    windOpticalSM: usual('windOpticalSM'),
    stillLossWM2K: usual('stillLossWM2K'),
    windLossJM3K: usual('windLossJM3K'),
    emissivityRatio: usual('emissivityRatio'),
  };
  let sum = 0;
  for (let minute = 1; minute <= 30; minute++) {
    const { windMs, irradianceWM2 } = weather.at(fromMs + (minute * stepMs) / 30);
    sum += opticalFraction(windMs, collector) * irradianceWM2;
  }
  return sum / 30;
}

describe('light that the pan took up on a day without a sensor of the sun', () => {
  const { fromMs, stepMs, valueWM2, lowWM2, highWM2 } = comparison.absorbed ?? {
    fromMs: 0,
    stepMs: 0,
    valueWM2: [],
    lowWM2: [],
    highWM2: [],
  };
  const truth = valueWM2.map((_, step) => trueWM2(fromMs + step * stepMs, stepMs));

  test('is told for every half hour of the day', () => {
    expect([valueWM2.length, lowWM2.length, highWM2.length]).toEqual([48, 48, 48]);
    for (const [step, value] of valueWM2.entries()) {
      expect(lowWM2[step]).toBeGreaterThanOrEqual(0);
      expect(lowWM2[step]).toBeLessThanOrEqual(value);
      expect(highWM2[step]).toBeGreaterThanOrEqual(value);
    }
  });

  test('follows the true light, which lies within the band nearly always', () => {
    const lit = truth.flatMap((true_, step) => (true_ < 10 ? [] : [step]));
    const held = lit.filter(
      (step) =>
        (lowWM2[step] as number) <= (truth[step] as number) &&
        (truth[step] as number) <= (highWM2[step] as number),
    );
    expect(lit.length).toBeGreaterThan(15);
    expect(held.length / lit.length).toBeGreaterThan(0.8);
    const mean = (values: readonly number[]) =>
      lit.reduce((sum, step) => sum + (values[step] as number), 0) / lit.length;
    expect(Math.abs(mean(valueWM2) - mean(truth))).toBeLessThan(0.3 * mean(truth));
    // A band that holds anything would tell nothing.
    expect(mean(highWM2) - mean(lowWM2)).toBeLessThan(1.2 * mean(truth));
  });

  test('is nought by night', () => {
    for (const [step, value] of valueWM2.entries()) if (truth[step] === 0) expect(value).toBeLessThan(5);
  });

  test('stands in the report', () => {
    const text = comparisonText(comparison, 'Etc/UTC');
    expect(text).toContain('Light that the sheet took up');
    const noon = valueWM2.indexOf(Math.max(...valueWM2));
    expect(text).toContain(`: ${(valueWM2[noon] as number).toFixed(0)} (`);
  });
});

test('where the sun was measured nothing has to be told', () => {
  const { comparison: measured } = lived('full', 0);
  expect(measured.absorbed).toBeNull();
  expect(comparisonText(measured, 'Etc/UTC')).not.toContain('Light that the sheet took up');
});
