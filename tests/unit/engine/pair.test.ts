import { describe, expect, it } from 'vitest';
import { learnPair, measurePair, notePair } from '../../../controller/engine/pair/learn.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import { doubtsOf, minutes } from './doubt-rig.ts';
import { emptyLoop, makeSite } from './rig.ts';

const site = makeSite('drain-valve');

describe('the offset of outlet and store bottom', () => {
  it('is the mean of all that was measured, weighted by certainty', () => {
    const once = notePair({}, 0.8, 0.5);
    // Weight 1 / (1 + 0.25); variance 0.25 / 1.25.
    expect(once['outletOffsetK']).toBeCloseTo(0.64, 12);
    expect(once['outletOffsetSdK']).toBeCloseTo(Math.sqrt(0.2), 12);
    const twice = notePair(once, 0.64, Math.sqrt(0.2));
    expect(twice['outletOffsetK']).toBeCloseTo(0.64, 12);
    expect(twice['outletOffsetSdK']).toBeCloseTo(Math.sqrt(0.1), 12);
  });

  it('is never known better than to 0.1 K', () => {
    let learnt = {};
    for (let i = 0; i < 20; i++) learnt = notePair(learnt, 0.3, 0.01);
    expect(learnt).toMatchObject({ outletOffsetSdK: 0.1 });
  });

  it('is taken anew where it cannot be both', () => {
    const known = { outletOffsetK: 0, outletOffsetSdK: 0.3 };
    // Three times the root of 0.09 and 0.16.
    expect(notePair(known, 1.51, 0.4)).toMatchObject({ outletOffsetK: 1.51, outletOffsetSdK: 0.4 });
    expect(notePair(known, -1.51, 0.4)).toMatchObject({ outletOffsetK: -1.51, outletOffsetSdK: 0.4 });
    expect(notePair(known, 1.49, 0.4)['outletOffsetK']).toBeCloseTo(1.49 * 0.36, 12);
  });

  it('keeps what else was learnt, and ends at 2 K to either side', () => {
    expect(notePair({ fillTimeS: 300 }, 9, 0.2)).toEqual({
      fillTimeS: 300,
      outletOffsetK: 2,
      outletOffsetSdK: 0.2,
    });
    expect(notePair({}, -9, 0.2)).toMatchObject({ outletOffsetK: -2 });
  });

  it('is taken off the difference by which the pump starts, not off that of the sheet', () => {
    const loop = emptyLoop(site).set({ panOutletC: 25, panSheetC: 26 }).run(15);
    expect(loop.last.belief.differenceK).toBe(5);
    loop.state = { ...loop.state, learnt: { outletOffsetK: 0.75, outletOffsetSdK: 0.2 } };
    expect(loop.step().last.belief.differenceK).toBe(4.25);
    loop.set({ panOutletC: { value: null, ageMs: 100, fault: 'open-circuit' } }).run(15);
    expect(loop.last.belief.differenceK).toBe(6);
  });

  it('of 2 K casts doubt on both sensors, of less on none', () => {
    const loop = emptyLoop(site);
    const at = (outletOffsetK: number) => {
      loop.state = { ...loop.state, learnt: { outletOffsetK, outletOffsetSdK: 0.2 } };
      return doubtsOf(minutes(loop, 2)).filter((text) => text.endsWith('pair-offset'));
    };
    expect(at(1.99)).toEqual([]);
    expect(at(2)).toEqual(['panOutletC disagrees pair-offset', 'storeBottomC disagrees pair-offset']);
    expect(at(-1.99)).toEqual([]);
    expect(at(-2)).toHaveLength(2);
  });
});

describe('water that circulates through the dark', () => {
  const hourMs = 3_600_000;

  /** An hour of circulation in the dark; the air is as warm as the water, so a clear sky alone takes some heat. */
  function night(storeC: number, changes: object = {}): Situation {
    const good = (value: number) => ({ quality: 'good', value, ageMs: 0 });
    return {
      state: {
        watch: { darkMs: 0 },
        phase: { name: 'circulating', sinceMs: 0, afterFill: false },
        outputs: { pumpFraction: 1 },
        learnt: {},
      },
      readings: { panOutletC: good(27), storeBottomC: good(storeC) },
      facts: { ambientC: storeC },
      site,
      runMs: hourMs,
      elapsedMs: 5000,
      ...changes,
    } as unknown as Situation;
  }

  it('measures the pair: the sky takes 0.36 K, give or take half of that', () => {
    const measured = measurePair(night(26));
    // 100 W/m2 at the most from 10 m2 into 20 L/min: 0.72 K.
    expect(measured?.offsetK).toBeCloseTo(1.36, 2);
    expect(measured?.sdK).toBeCloseTo(0.18, 2);
    const { outletOffsetK, outletOffsetSdK } = learnPair(night(26));
    expect(outletOffsetK).toBeCloseTo(1.36 / (1 + 0.18 ** 2), 2);
    expect(outletOffsetSdK).toBeCloseTo(0.177, 3);
  });

  it('is noted at each full hour alone', () => {
    expect(learnPair(night(26, { runMs: hourMs + 4999 }))).not.toEqual({});
    expect(learnPair(night(26, { runMs: hourMs + 5000 }))).toEqual({});
    expect(learnPair(night(26, { runMs: hourMs - 1 }))).toEqual({});
  });

  it('is not learnt from where the offset would be a fault', () => {
    expect(learnPair(night(25.37))).not.toEqual({});
    expect(learnPair(night(25.35))).toEqual({});
  });

  it('is awaited for half an hour, and for the pan to be flushed', () => {
    const since = (sinceMs: number, darkMs: number) => {
      const { state } = night(26);
      const phase = { name: 'circulating', sinceMs, afterFill: false };
      return measurePair(night(26, { state: { ...state, phase, watch: { darkMs } } }));
    };
    expect(since(0, hourMs / 2)).not.toBeNull();
    expect(since(0, hourMs / 2 + 1)).toBeNull();
    // Three changes of 400 L at 20 L/min take an hour.
    expect(since(1, 0)).toBeNull();
  });

  it('tells nothing behind an exchanger, nor by a sensor that is missing', () => {
    expect(measurePair(night(26, { site: { ...site, plumbing: 'reservoir' } }))).toBeNull();
    expect(measurePair(night(26, { readings: {} }))).toBeNull();
  });
});
