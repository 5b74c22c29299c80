import { describe, expect, it } from 'vitest';
import { inputOf } from '../../../../controller/daemon/input.ts';
import { localDaysOf } from '../../../../controller/log/local-day.ts';

const days = localDaysOf('Atlantic/Azores');
const heard = {
  nowMs: Date.UTC(2031, 0, 1, 0, 30),
  elapsedMs: 5,
  readings: {},
  feedback: null,
  request: null,
};

describe('the input of a step', () => {
  it('names the local day of the site', () => {
    expect(inputOf(heard, days).localDay).toBe('2030-12-31');
  });

  it('is what JSON and the log hold without loss', () => {
    const input = inputOf(
      {
        ...heard,
        readings: {
          panOutletC: { value: -0, ageMs: 3.4 },
          panSheetC: { value: Number.NaN, ageMs: 1e-9 },
          windMs: { value: Number.POSITIVE_INFINITY, ageMs: -2 },
          ambientC: { value: null, ageMs: 7, fault: 'open-circuit' },
        },
        feedback: { pumpFraction: -0, drainOpen: null, ageMs: 0.6 },
      },
      days,
    );
    expect(input.readings).toStrictEqual({
      panOutletC: { value: 0, ageMs: 3 },
      panSheetC: { value: null, ageMs: 0, fault: 'unreadable' },
      windMs: { value: null, ageMs: 0, fault: 'unreadable' },
      ambientC: { value: null, ageMs: 7, fault: 'open-circuit' },
    });
    expect(input.feedback).toStrictEqual({ pumpFraction: 0, drainOpen: null, ageMs: 1 });
  });
});
