import { describe, expect, it } from 'vitest';
import { isStuck, updateStill } from '../../../controller/engine/sense/doubt/itself.ts';
import { scatterAfter } from '../../../controller/engine/sense/doubt/scatter.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import { causeOf, doubtsOf, minutes } from './doubt-rig.ts';
import { circulatingLoop, emptyLoop, Loop, makeSite } from './rig.ts';

const site = makeSite('drain-valve');
const noSheet = makeSite('drain-valve', ['panOutletC', 'panInletC', 'storeBottomC', 'ambientC']);
const outletOnly = makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'ambientC']);

/** Samples that leave and come back by `sizeK` around 20 °C, so that each second difference is 4 times that. */
function scattering(loop: Loop, channel: Channel, sizeK: number, count: number): Loop {
  for (let i = 0; i < count; i++) loop.set({ [channel]: 20 + (i % 2 === 0 ? sizeK : -sizeK) }).step(5);
  return loop;
}

describe('scatter', () => {
  const at = (...values: number[]) => values.map((value, i) => ({ value, atMs: i * 10_000 }));

  it('takes a hundredth of each second difference', () => {
    expect(scatterAfter(0, at(10, 12, 13))).toBeCloseTo(0.01, 12);
    expect(scatterAfter(1, at(10, 11, 12))).toBeCloseTo(0.99, 12);
    expect(scatterAfter(2, at(10, 8, 10))).toBeCloseTo(2.02, 12);
  });

  it('counts a spike of any size as ten', () => {
    expect(scatterAfter(0, at(10, 50, 10))).toBeCloseTo(0.1, 12);
    expect(scatterAfter(0, at(10, 15, 10))).toBeCloseTo(0.1, 12);
    expect(scatterAfter(0, at(10, 14, 10))).toBeCloseTo(0.08, 12);
  });

  it('leaves samples alone that are too few or too far apart', () => {
    expect(scatterAfter(0.5, at(10, 50))).toBe(0.5);
    const apart = (lastMs: number) => [
      { value: 10, atMs: 0 },
      { value: 12, atMs: 10_000 },
      { value: 10, atMs: lastMs },
    ];
    expect(scatterAfter(0, apart(30_000))).toBeCloseTo(0.04, 12);
    expect(scatterAfter(0, apart(30_001))).toBe(0);
  });
});

describe('a sensor that scatters', () => {
  it('is in doubt from a mean of 1.5 K on', () => {
    // Second differences of 1.6 K reach a mean of 1.5 K, those of 1.4 K never.
    expect(doubtsOf(scattering(new Loop(site).step(), 'ambientC', 0.4, 600))).toEqual([
      'ambientC noisy itself',
    ]);
    expect(doubtsOf(scattering(new Loop(site).step(), 'ambientC', 0.35, 600))).toEqual([]);
  });

  it('is free again once it is quiet, below half of that', () => {
    const loop = scattering(new Loop(site).step(), 'ambientC', 0.6, 600);
    expect(causeOf(loop, 'ambientC')).toBe('noisy');
    // Second differences of 0.8 K keep it; of 0.7 K let it go.
    expect(doubtsOf(scattering(loop, 'ambientC', 0.2, 800))).toHaveLength(1);
    expect(doubtsOf(scattering(loop, 'ambientC', 0.175, 800))).toEqual([]);
    expect(causeOf(loop.step(), 'ambientC')).toBe('good');
  });

  it('is not the flow meter, whose stream may well be restless', () => {
    const metered = makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'flowLMin']);
    expect(doubtsOf(scattering(new Loop(metered).step(), 'flowLMin', 9, 600))).toEqual([]);
  });

  it('is named by the alarm, and the sheet stands in for the outlet', () => {
    const loop = emptyLoop(site);
    scattering(loop, 'panOutletC', 3, 200);
    expect(loop.alarm('sensor-doubtful')?.text).toBe('A sensor cannot be right: Pan outlet.');
    loop.set({ panSheetC: 40 }).step();
    expect(loop.last.belief.differenceK).toBe(0);
    scattering(loop, 'panOutletC', 3, 3);
    expect(loop.last.belief.differenceK).toBe(20);
    for (let i = 0; i < 400 && loop.phase !== 'filling'; i++)
      loop.set({ panOutletC: 20 + (i % 2 === 0 ? 3 : -3) }).step(5);
    expect(loop.phase).toBe('filling');
  });
});

describe('a sensor that shows the same to the last digit', () => {
  /** The witness goes up by `byK` over `overMin`, in steps of a minute, while the rest stands. */
  function still(loop: Loop, witness: Channel, byK: number, overMin: number): Loop {
    for (let i = 1; i <= overMin; i++) minutes(loop.set({ [witness]: 20 + (byK * i) / overMin }), 1);
    return loop;
  }

  it.each([
    ['panOutletC', 'panSheetC', 6, 181, site],
    ['panSheetC', 'panOutletC', 6, 181, site],
    ['panOutletC', 'panInletC', 6, 181, noSheet],
    ['panOutletC', 'ambientC', 6, 181, outletOnly],
  ] as const)('%s is stuck when %s moved by %d K in %d minutes', (stuck, witness, byK, min, ofSite) => {
    // A moving company keeps the others from standing still themselves.
    const start = () => minutes(new Loop(ofSite).step().set({ [witness]: 20 }), 10);
    const others = (loop: Loop) => doubtsOf(loop).filter((text) => text.startsWith(`${stuck} stuck`));
    expect(others(still(start(), witness, byK + 0.5, min))).toHaveLength(1);
    expect(others(still(start(), witness, byK - 0.5, min))).toEqual([]);
    expect(others(still(start(), witness, byK + 0.5, 160))).toEqual([]);
  });

  it('is not stuck when it moved meanwhile', () => {
    const loop = minutes(new Loop(site).step(), 10);
    still(loop, 'panSheetC', 4, 100);
    minutes(loop.set({ panOutletC: 20.1 }), 1);
    expect(doubtsOf(still(loop, 'panSheetC', 7, 170))).toEqual([]);
  });

  it('is stuck after half an hour in a full pan', () => {
    const full = (min: number) => doubtsOf(still(minutes(circulatingLoop(site), 1), 'panSheetC', 8, min));
    expect([full(28), full(32)]).toEqual([[], ['panOutletC stuck itself']]);
  });

  it('is the air after half a day, when the sheet moved by 15 K', () => {
    const loop = (byK: number, min: number) => {
      const warming = minutes(new Loop(site).step(), 10);
      for (let i = 1; i <= min; i++) {
        const risenC = 20 + (byK * i) / min;
        minutes(
          warming.set({ panSheetC: risenC, panOutletC: risenC, panInletC: risenC, storeBottomC: risenC + 5 }),
          1,
        );
      }
      return doubtsOf(warming).filter((text) => text.startsWith('ambientC stuck')).length;
    };
    expect([loop(16, 700), loop(16, 725), loop(14.5, 725)]).toEqual([0, 1, 0]);
  });

  it('is free again as soon as it moves', () => {
    const loop = still(minutes(new Loop(site).step(), 10), 'panSheetC', 8, 190);
    expect(causeOf(loop.step(), 'panOutletC')).toBe('stuck');
    minutes(loop.set({ panOutletC: 21 }), 3);
    expect(doubtsOf(loop)).toEqual([]);
    expect(causeOf(loop.step(), 'panOutletC')).toBe('good');
  });

  it('is the store bottom only while water circulates past it for three hours', () => {
    const hourMs = 3_600_000;
    const at = (phase: 'circulating' | 'resting', outletC: number, runMs = 3 * hourMs) => {
      const situation = {
        state: {
          sensing: { storeBottomC: { changedMs: 0 } },
          watch: { still: { storeBottomC: { lowC: 22, highC: 30 } } },
          phase: { name: phase },
          water: { level: 'full' },
        },
        readings: { panOutletC: { quality: 'good', value: outletC, ageMs: 0 } },
        runMs,
      } as unknown as Situation;
      const still = updateStill(situation);
      return [still.storeBottomC, isStuck('storeBottomC', still, situation)];
    };
    expect(at('circulating', 32)).toEqual([{ lowC: 22, highC: 32 }, true]);
    expect(at('circulating', 31.9)).toEqual([{ lowC: 22, highC: 31.9 }, false]);
    expect(at('circulating', 20)).toEqual([{ lowC: 20, highC: 30 }, true]);
    expect(at('circulating', 32, 3 * hourMs - 1)).toEqual([{ lowC: 22, highC: 32 }, false]);
    expect(at('resting', 40)).toEqual([{ lowC: 22, highC: 30 }, false]);
    expect(at('circulating', 32, 600_000)[0]).toBeDefined();
    expect(at('circulating', 32, 599_999)).toEqual([undefined, false]);
  });

  it('begins anew after time that nobody saw', () => {
    const loop = still(minutes(new Loop(site).step(), 10), 'panSheetC', 5, 160);
    loop.step(null);
    expect(loop.state.watch.still).toEqual({});
    expect(doubtsOf(still(loop, 'panSheetC', 8, 160))).toEqual([]);
  });
});
