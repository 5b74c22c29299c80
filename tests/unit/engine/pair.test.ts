import { describe, expect, it } from 'vitest';
import { measurePair, notePair } from '../../../controller/engine/pair/learn.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import { doubtsOf, minutes } from './doubt-rig.ts';
import { circulatingLoop, emptyLoop, makeSite } from './rig.ts';

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
  /** The sun sets at half past nine; the air is as warm as the water, so a clear sky alone takes some heat. */
  function dark(
    storeBottomC: number,
    kind: Parameters<typeof makeSite>[0] = 'drain-valve',
    plumbing = 'open-store',
  ) {
    const sensors = ['panOutletC', 'storeBottomC', 'ambientC', 'reservoirC'] as const;
    const loop = circulatingLoop(makeSite(kind, sensors, { plumbing }), { stopDifferenceK: 0.2 });
    loop.set({ storeBottomC, ambientC: storeBottomC, reservoirC: storeBottomC });
    while (loop.state.watch.darkMs === null) minutes(loop, 1);
    return loop;
  }

  it('measures the pair: 0.36 K less than alike, give or take half of that', () => {
    const loop = dark(26);
    expect(loop.state.learnt).toEqual({});
    minutes(loop, 100);
    const { learnt } = loop.state;
    // 100 W/m2 at the most from 10 m2 into 20 L/min: 0.72 K.
    const measuredK = 1 + 0.36;
    expect(Math.abs((learnt['outletOffsetK'] ?? 0) - measuredK)).toBeLessThan(0.06);
    expect(learnt['outletOffsetSdK']).toBeLessThan(0.19);
    expect(Math.abs(loop.last.belief.differenceK ?? 0) - 0.36).toBeLessThan(0.1);
  });

  it('does not so where the offset would be a fault, nor behind an exchanger', () => {
    expect(minutes(dark(25.2), 70).state.learnt).toEqual({});
    expect(minutes(dark(26, 'pump-stop', 'reservoir'), 100).state.learnt).toEqual({});
  });

  it('is awaited for half an hour', () => {
    const loop = dark(26);
    const situation = (): Situation => {
      const { state, site: ofSite, settings } = loop;
      const { readings } = loop.last.belief;
      return {
        state,
        readings,
        facts: { ambientC: 26 },
        site: ofSite,
        settings,
        runMs: state.runMs,
      } as Situation;
    };
    minutes(loop, 28);
    expect(measurePair(situation())).toBeNull();
    minutes(loop, 2);
    expect(measurePair(situation())?.offsetK).toBeCloseTo(1.36, 1);
    expect(measurePair(situation())?.sdK).toBeCloseTo(0.18, 2);
  });
});
