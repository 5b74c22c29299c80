import { describe, expect, it } from 'vitest';
import type { RawReadings } from '../../../shared-types/readings.ts';
import { erringOf, measuredOf, notMeasuredWords } from '../../../sim/identify/measured.ts';
import { stretchOf } from '../../../sim/identify/model/stretch.ts';
import { errorUnknowns } from '../../../sim/identify/model/unknowns.ts';
import { day, minutely, spanOf } from '../sim/identify/world/span-rig.ts';

const one = (value: number) => ({ value, ageMs: 0 });

/** A day on which the anemometer and the sheet's thermometer were read up to some minute. */
const dayOf = (end: number) =>
  stretchOf(
    spanOf(
      minutely(-60, 1440, (minute) => {
        const readings: RawReadings = { ambientC: one(15) };
        if (minute < end) Object.assign(readings, { windMs: one(3), panSheetC: one(20) });
        return { input: { readings } };
      }),
    ),
  );
const [half, less] = [dayOf(720), dayOf(719)];

describe('what counts as measured', () => {
  it('is what was read in half of every day', () => {
    expect(measuredOf([half, half])).toEqual(['ambientC', 'windMs', 'panSheetC']);
    expect(measuredOf([half, less])).toEqual(['ambientC']);
    expect(measuredOf([less, half])).toEqual(['ambientC']);
  });

  it('is the same to the fit and to the weather that it is run in', () => {
    for (const stretch of [half, less])
      expect(stretch.origins.wind === 'measured').toBe(measuredOf([stretch]).includes('windMs'));
  });

  it('errs as its sensor does; a wind that does not count as an assumed one, a thermometer as ever', () => {
    const sdOf = (key: string, stretches: Parameters<typeof erringOf>[0]) =>
      errorUnknowns(erringOf(stretches), [1440]).find((unknown) => unknown.key === key)?.sd;
    expect(sdOf('scale of windMs', [half])).toBeLessThan(0.1);
    expect(sdOf('scale of windMs', [half, less])).toBe(0.5);
    expect(sdOf('offset of panSheetC', [less])).toBe(sdOf('offset of panSheetC', [half]));
    expect(sdOf('offset of panSheetC', [less])).toBeGreaterThan(0);
  });

  it('is told where a sensor of the weather is there and does not', () => {
    expect(notMeasuredWords([half])).toEqual([]);
    expect(notMeasuredWords([half, less])).toEqual([
      `Wind counts as not measured: it was read in less than half of ${day}.`,
    ]);
  });
});
