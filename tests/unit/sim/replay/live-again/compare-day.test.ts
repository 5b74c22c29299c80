import { beforeAll, describe, expect, test } from 'vitest';
import type { LogReader } from '../../../../../controller/log/log.ts';
import { comparisonSchema } from '../../../../../shared-types/tuning.ts';
import { compareDay } from '../../../../../sim/replay/live-again/compare-day.ts';
import { comparisonText } from '../../../../../sim/replay/live-again/report-text.ts';
import { type CounterfactualCase, counterfactualCase } from '../../../../support/counterfactual-cases.ts';

let one: CounterfactualCase;
let day: string;
const options = { fit: null, samples: 0, seed: 3 } as const;

beforeAll(() => {
  one = counterfactualCase(4, 'full', 2);
  day = one.logged.days.at(-1) as string;
}, 60_000);

describe('a day that is lived again', () => {
  test('under the settings of then is the same on both sides to the byte', () => {
    const comparison = compareDay(one.logged.reader, day, { ...one.settings }, options);
    expect(comparisonSchema.parse(comparison)).toEqual(comparison);
    expect(JSON.stringify(comparison?.tried)).toBe(JSON.stringify(comparison?.base));
    expect(comparison?.heatGainJ).toEqual({ value: 0, low: 0, high: 0 });
    expect(comparison?.remarks).toEqual([]);
  });

  test('under other settings lies near what the loop then brings, and says what it rests on', () => {
    const comparison = compareDay(one.logged.reader, day, one.tried, {
      ...options,
      samples: 4,
      whyNoFit: 'its file is torn',
    });
    const truthJ = one.logged.trueHomeJ(one.tried);
    const { value = 0 } = comparison?.tried.heatHomeJ ?? {};
    // This one is taken with usual traits: how near it lies with fitted ones is for the counterfactual to say.
    expect(Math.abs(value - truthJ)).toBeLessThan(0.25 * truthJ);
    const trueGainJ = truthJ - one.logged.trueHomeJ(one.settings);
    const { value: gainJ, low, high } = comparison?.heatGainJ ?? { value: 0, low: 0, high: 0 };
    expect(trueGainJ).toBeLessThan(0);
    expect(gainJ).toBeLessThan(0);
    expect(low <= trueGainJ && trueGainJ <= high).toBe(true);
    expect(comparison?.world).toEqual({
      irradiance: 'measured',
      air: 'measured',
      wind: 'measured',
      sky: 'reconstructed',
      draws: 'reconstructed',
    });
    if (comparison === undefined) throw new Error('nobody gave it up');
    const text = comparisonText(comparison, 'Etc/UTC');
    expect(text).toContain('batchRunning 0 -> 1');
    expect(text).toContain('No fit of this loop is used, since its file is torn: usual values');
    expect(text).toContain('Where the log cannot vouch for it:');
  });

  test('on which the settings were changed says so, also where the day before is kept', () => {
    const { reader } = one.logged;
    const noonMs = Date.parse(`${day}T12:00:00Z`);
    const changed: LogReader = {
      ...reader,
      settings: (revision) => (revision === 2 ? { ...one.settings, stopDelayS: 61 } : one.settings),
      records: (name) =>
        [...reader.records(name)]
          .map((record) => (record.input.nowMs < noonMs ? record : { ...record, settingsRevision: 2 }))
          .values(),
    };
    const comparison = compareDay(changed, day, one.settings, options);
    expect(comparison?.settingsThen.stopDelayS).toBe(61);
    expect(comparison?.remarks).toEqual([
      'The settings were changed on that day; the last of them are named.',
    ]);
  });

  test('is given up when nobody wants it any more', () => {
    expect(compareDay(one.logged.reader, day, one.tried, { ...options, goOn: () => false })).toBeUndefined();
  });

  test('is refused when nothing of it is kept', () => {
    const missing = '2030-01-01';
    expect(() => compareDay(one.logged.reader, missing, one.tried, options)).toThrow(
      new RangeError(`nothing of ${missing} is kept`),
    );
  });
});
