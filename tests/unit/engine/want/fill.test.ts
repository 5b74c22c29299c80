import { describe, expect, it } from 'vitest';
import type { Goal } from '../../../../controller/engine/situation.ts';
import type { Phase } from '../../../../controller/engine/state.ts';
import { fillCostJ, leastEmptyMin } from '../../../../controller/engine/want/refill.ts';
import type { ReasonCode } from '../../../../shared-types/reasons.ts';
import { nowMs } from '../situations.ts';
import { given, type Harvest, resting, since, type Told, valuesOf, wanted, warm } from './wants.ts';

const empty: Phase = { name: 'empty', sinceMs: 0, afterNoGain: false };

describe('what an empty pan waits for', () => {
  const paying = { hourJ: 1e9 };
  const ready: Told = { phase: empty, told: warm, timers: { fillMs: since(30_000) }, harvest: paying };

  it('is nothing once all is well', () => {
    expect(wanted(ready)).toEqual(['run', 'filling-for-heat']);
    expect(valuesOf(ready)).toEqual({ differenceK: 20, fillDifferenceK: 10 });
  });

  it.each<[string, Told, Goal, ReasonCode]>([
    ['a store sensor', { told: { panSheetC: 40 } }, 'empty', 'waiting-for-sun'],
    ['a sheet above the store', { told: { panSheetC: 20, storeBottomC: 20 } }, 'empty', 'waiting-for-sun'],
    ['the fill difference', { timers: {} }, 'empty', 'waiting-fill-difference'],
    [
      'the fill difference',
      { told: { panSheetC: 20.1, storeBottomC: 20 }, timers: {} },
      'empty',
      'waiting-fill-difference',
    ],
    ['another day', { fills: 4 }, 'empty', 'waiting-fills-per-day'],
    ['nothing', { fills: 3 }, 'run', 'filling-for-heat'],
    ['the fill delay', { timers: { fillMs: since(29_999) } }, 'empty', 'waiting-fill-delay'],
    [
      'a reading that is good',
      { told: { ...warm, panSheetC: { quality: 'doubtful', value: 40, ageMs: 0, cause: 'jumped' } } },
      'empty',
      'waiting-fill-delay',
    ],
    ['a fill that pays', { harvest: {} }, 'empty', 'waiting-worth-filling'],
    ['the sun, at rest', { phase: resting, level: 'part', told: {} }, 'rest', 'waiting-for-sun'],
    [
      'the fill difference, at rest',
      { phase: resting, level: 'part', timers: {} },
      'rest',
      'waiting-fill-difference',
    ],
    ['nothing, at rest', { phase: resting, level: 'part' }, 'run', 'filling-for-heat'],
  ])('is %s', (_what, told, goal, code) => {
    expect(wanted({ ...ready, ...told })).toEqual([goal, code]);
  });

  it('is a quarter of an hour after it was emptied for want of gain', () => {
    const then = (ms: number, afterNoGain = true) =>
      wanted({ ...ready, phase: { name: 'empty', sinceMs: since(ms), afterNoGain } })[1];
    expect([then(leastEmptyMin * 60_000 - 1), then(leastEmptyMin * 60_000)]).toEqual([
      'waiting-after-emptying',
      'filling-for-heat',
    ]);
    expect(then(0, false)).toBe('filling-for-heat');
    const told = { ...ready, phase: { name: 'empty', sinceMs: since(120_000), afterNoGain: true } as const };
    expect(valuesOf(told)).toEqual({ emptyMin: 2, leastEmptyMin });
    expect(
      wanted({ ...ready, phase: { ...resting, sinceMs: nowMs, afterNoGain: true } as Phase, level: 'part' }),
    ).toEqual(['run', 'filling-for-heat']);
  });

  it('comes with its numbers', () => {
    expect(valuesOf({ ...ready, fills: 4 })).toEqual({ fills: 4, fillsPerDay: 4 });
    expect(valuesOf({ ...ready, timers: { fillMs: since(20_000) } })).toEqual({
      differenceK: 20,
      fillDifferenceK: 10,
      heldS: 20,
      fillDelayS: 30,
    });
  });

  it('is an hour ahead that pays the fill, by the day so far or by the sheet and the sun', () => {
    // 3 times 50 W for 100 s, and 30 kJ for each of 10.2 m2.
    const costJ = 3 * 50 * 100 + 30_000 * 10.2;
    expect(fillCostJ(given(ready))).toBeCloseTo(costJ, 6);
    const cost = fillCostJ(given(ready));
    const waits = (harvest: Partial<Harvest>) => wanted({ ...ready, harvest })[1] === 'waiting-worth-filling';
    expect([waits({ hourJ: cost }), waits({ hourJ: cost - 1 })]).toEqual([false, true]);
    expect([waits({ hourJ: null }), waits({ hourJ: null, dryC: 90 })]).toEqual([true, false]);
    // 0.9 of the light that comes on top, as clear as the day is, on 10.2 m2 for an hour.
    const risingWM2 = cost / 3600 / 10.2 / 0.9 / 0.5;
    const rising = (share: number) => ({
      hourJ: 0,
      dryC: 20,
      clearFraction: 0.5,
      risingWM2: risingWM2 * share,
    });
    expect([waits(rising(1.0001)), waits(rising(0.9999))]).toEqual([false, true]);
    expect(valuesOf({ ...ready, harvest: { hourJ: 3.6e4 } })).toEqual({
      comingKWh: 0.01,
      costKWh: cost / 3.6e6,
    });
    expect(valuesOf({ ...ready, harvest: { hourJ: null, dryC: -50 } })).toEqual({
      comingKWh: 0,
      costKWh: cost / 3.6e6,
    });
  });
});
