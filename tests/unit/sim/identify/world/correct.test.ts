import { describe, expect, it } from 'vitest';
import { type Corrected, correctSky, nothingUnknown } from '../../../../../sim/identify/world/correct.ts';
import type { SkyColumns } from '../../../../../sim/identify/world/sky-columns.ts';
import type { LoggedSpan } from '../../../../../sim/identify/world/span.ts';

const minutes = 30;
/** What the sheet of the loop below warms by for each watt of long-wave light [K m2/W]. */
const bySky = 0.06;

interface Given {
  readonly seenC?: number;
  readonly zenithDeg?: number;
  readonly phase?: string;
  readonly changedMs?: number;
  readonly skyWM2?: number;
  readonly step?: number;
}

/** A window of ten minutes; the sheet would show 10 °C under the sky of the formula. */
function corrected({ seenC = 11, zenithDeg = 120, phase = 'empty', ...given }: Given): Corrected {
  const begun = [{ fromMs: given.changedMs ?? -1e9, phase }];
  return correctSky({
    span: { minutes: { fromMs: 0 }, phases: begun } as unknown as LoggedSpan,
    sky: {
      irradianceWM2: new Float64Array(minutes),
      sun: { zenithDeg: new Float64Array(minutes).fill(zenithDeg) },
    } as unknown as SkyColumns,
    from: 10,
    to: 20,
    unknowns: { ...nothingUnknown, skyWM2: given.skyWM2 ?? 0 },
    steps: { factor: 0, airK: 0, skyWM2: given.step ?? 10 },
    seen: { panC: seenC, bottomC: 20 },
    attempt: ({ skyWM2 }) => ({ panC: 10 + bySky * skyWM2, bottomC: 20 }),
  });
}

describe('a sky that is told by formula', () => {
  it('is put right by a dry sheet in the dark, as far as its thermometer can be trusted', () => {
    // 10 W/m2 are 0.6 K, and a window may part by 0.15 K without any meaning.
    expect(corrected({}).unknowns.skyWM2).toBeCloseTo((10 ** 2 * bySky * 1) / (0.15 ** 2 + 0.6 ** 2), 9);
    let skyWM2 = 0;
    for (let window = 0; window < 5; window++) ({ skyWM2 } = corrected({ skyWM2 }).unknowns);
    expect(skyWM2).toBeCloseTo(1 / bySky, 2);
  });

  it.each([
    ['by day', { zenithDeg: 96 }],
    ['of a full pan', { phase: 'resting' }],
    ['soon after a change', { changedMs: 6 * 60_000 }],
    ['without a reading', { seenC: Number.NaN }],
    ['where it is measured', { step: 0 }],
  ])('stays as it was %s', (_when, given) => {
    expect(corrected({ ...given, skyWM2: 7 }).unknowns).toEqual({ ...nothingUnknown, skyWM2: 7 });
  });

  it('is no further from the formula than clear and closed skies are apart', () => {
    expect(corrected({ seenC: 40 }).unknowns.skyWM2).toBe(80);
    expect(corrected({ seenC: -30 }).unknowns.skyWM2).toBe(-80);
  });
});
