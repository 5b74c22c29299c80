import { describe, expect, it } from 'vitest';
import { compareEnds, learnEnds, withNight } from '../../../../controller/engine/meter/ends-offset.ts';
import { type EngineState, initialState } from '../../../../controller/engine/state.ts';
import { nowMs, situationOf } from '../situations.ts';

const twoHoursMs = 7_200_000;
const told = { panOutletC: 10.5, panInletC: 10 };
type Night = EngineState['meter']['night'];

/** A pan that has stood empty for two hours, in the dark. */
function compare(
  before: Night,
  changes: Parameters<typeof situationOf>[0] = {},
  emptyMs = twoHoursMs,
): Night {
  const phase = { name: 'empty', sinceMs: nowMs - emptyMs, afterNoGain: false } as const;
  return compareEnds(before, situationOf({ told, sunHeightDeg: -10, state: { phase }, ...changes }));
}

describe('the comparison of a night', () => {
  const begun = { sumKMs: 100, forMs: 200 };

  it('adds difference and time', () => {
    expect(compare(null)).toEqual({ sumKMs: 2500, forMs: 5000 });
    expect(compare(begun)).toEqual({ sumKMs: 2600, forMs: 5200 });
  });

  it('begins after two hours of a dry pan', () => {
    expect(compare(begun, {}, twoHoursMs - 1)).toBe(begun);
  });

  it('takes the sun for down at 3 deg below the horizon', () => {
    expect(compare(begun, { sunHeightDeg: -3 })).not.toBe(begun);
    expect(compare(begun, { sunHeightDeg: -2.9 })).toBe(begun);
    expect(compare(begun, { sunHeightDeg: null })).toBe(begun);
  });

  it('ends after two hours of comparing', () => {
    const nearly = { sumKMs: 100, forMs: twoHoursMs - 1 };
    const over = { sumKMs: 100, forMs: twoHoursMs };
    expect(compare(nearly)).not.toBe(nearly);
    expect(compare(over)).toBe(over);
  });

  it('waits for both ends', () => {
    expect(compare(begun, { told: { panOutletC: 10.5 } })).toBe(begun);
    expect(compare(begun, { told: { panInletC: 10 } })).toBe(begun);
  });

  it('is forgotten once the pan is no longer empty', () => {
    const phase = { name: 'resting', sinceMs: 0 } as const;
    expect(compareEnds(begun, situationOf({ told, sunHeightDeg: -10, state: { phase } }))).toBeNull();
  });
});

describe('what a night teaches', () => {
  const learnt = { fillTimeS: 300 };
  const nightOf = (offsetK: number, forMs = twoHoursMs) => ({ sumKMs: offsetK * forMs, forMs });
  const taught = (night: Night, before: Night = null) => learnEnds(learnt, before, night);

  it('is its mean, once it was compared for two hours', () => {
    expect(taught(nightOf(0.5))).toEqual({ fillTimeS: 300, endsOffsetK: 0.5 });
    expect(taught(nightOf(0.5, twoHoursMs - 1))).toBe(learnt);
    expect(taught(null)).toBe(learnt);
    expect(taught(null, nightOf(0.5))).toBe(learnt);
  });

  it('is taught once', () => {
    const night = nightOf(0.5);
    expect(taught(night, night)).toBe(learnt);
  });

  it('is nothing beyond 2 K', () => {
    expect(taught(nightOf(2))).toMatchObject({ endsOffsetK: 2 });
    expect(taught(nightOf(-2))).toMatchObject({ endsOffsetK: -2 });
    expect(taught(nightOf(2.001))).toBe(learnt);
    expect(taught(nightOf(-2.001))).toBe(learnt);
  });

  it('is a quarter of the way from what the nights before have taught', () => {
    expect(learnEnds({ endsOffsetK: 0.4 }, null, nightOf(0.8))['endsOffsetK']).toBeCloseTo(0.5, 12);
  });

  it('is kept with the meter, which is another one only when the night is', () => {
    const { meter } = initialState();
    const night = nightOf(0.5);
    expect(withNight(meter, null)).toBe(meter);
    expect(withNight(meter, night)).toEqual({ ...meter, night });
  });
});
