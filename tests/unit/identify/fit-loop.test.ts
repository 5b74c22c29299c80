import { describe, expect, it } from 'vitest';
import { safeOutputs } from '../../../controller/engine/index.ts';
import type { PhaseName } from '../../../shared-types/engine.ts';
import { fitLoop } from '../../../sim/identify/fit-loop.ts';
import { minutely, spanOf } from '../sim/identify/world/span-rig.ts';

const readings = { panSheetC: { value: 20, ageMs: 0 }, ambientC: { value: 15, ageMs: 0 } };
/** An hour of the day before, in the first half of which the loop was emptying, and the day. */
const dayOf = (phase: PhaseName, own: object | ((minute: number) => object) = readings) =>
  spanOf(
    minutely(-60, 1440, (minute) => ({
      input: { feedback: null, readings: typeof own === 'function' ? own(minute) : own },
      outcome: { phase: minute < -30 ? 'emptying' : phase, outputs: safeOutputs },
    })),
  );
const verdictOf = (phase: PhaseName, own?: Parameters<typeof dayOf>[1]) => {
  const { converged, parameters, verdicts } = fitLoop([dayOf(phase, own)]);
  expect([converged, parameters]).toEqual([false, []]);
  return verdicts[0];
};

describe('a day that tells nothing of its loop', () => {
  it('is named as one on which the loop stood stopped', () => {
    expect(verdictOf('stopped')).toContain('The loop stood stopped for safety all the time');
  });

  it('is named as one without a thermometer of pan or air', () => {
    expect(verdictOf('stopped', { ambientC: readings.ambientC })).toContain('No thermometer of the pan');
    expect(verdictOf('empty', { panSheetC: readings.panSheetC })).toContain('No thermometer of the air');
  });

  it('is named as one without a thermometer of the air that was read in half of it', () => {
    const until = (end: number) => (minute: number) =>
      minute < end ? readings : { panSheetC: readings.panSheetC };
    expect(verdictOf('emptying', until(719))).toContain('No thermometer of the air');
    expect(verdictOf('emptying', until(720))).toContain('Only 0 times of ten minutes');
  });

  it('is named as one on which water was always on the move', () => {
    expect(verdictOf('emptying')).toContain('Only 0 times of ten minutes');
  });
});
