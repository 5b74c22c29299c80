import { describe, expect, it } from 'vitest';
import { drainOpenSince } from '../../../../controller/engine/hazards/drain-open.ts';
import { hasRunDry, noFlowSince } from '../../../../controller/engine/hazards/no-flow.ts';
import { initialState, type Phase, safeOutputs } from '../../../../controller/engine/state.ts';
import { quickSettings } from '../rig.ts';
import { type Given, nowMs, situationOf, type Told } from '../situations.ts';

const { timers } = initialState();
const going: Phase = { name: 'circulating', sinceMs: 0, afterFill: false };
const filling = (forMs: number): Phase => ({ name: 'filling', sinceMs: nowMs - forMs });
const jumped = (value: number) => ({ quality: 'doubtful', value, ageMs: 0, cause: 'jumped' }) as const;
const learnt = { fullPowerW: 40 };

/** Since when the pump of a full loop at full speed runs dry. */
const dry = (told: Told, { state, ...given }: Given = {}) =>
  noFlowSince(
    situationOf({
      ...{ told, level: 'full', ...given },
      state: { phase: going, outputs: { ...safeOutputs, pumpFraction: 1 }, ...state },
    }),
  );

describe('a pump that may run dry', () => {
  it('does so since the step before, or since it was first seen', () => {
    expect(dry({ flowLMin: 0 })).toBe(nowMs - 5000);
    expect(dry({ flowLMin: 0 }, { state: { timers: { ...timers, noFlowMs: 7 } } })).toBe(7);
    expect(dry({ flowLMin: 20 }, { state: { timers: { ...timers, noFlowMs: 7 } } })).toBeNull();
  });

  it.each<[string, Told, Given, boolean]>([
    ['by a flow of less than a tenth', { flowLMin: 1.99 }, {}, true],
    ['not by a tenth', { flowLMin: 2, pumpPowerW: 0 }, {}, false],
    ['by a doubtful flow that is low', { flowLMin: jumped(1.99) }, {}, true],
    ['not by a doubtful flow that is high', { flowLMin: jumped(2) }, {}, false],
    ['not by nothing', {}, {}, false],
    ['by a pump without power', { pumpPowerW: 2.4 }, {}, true],
    ['by a pump in air', { pumpPowerW: 19 }, { state: { learnt } }, true],
    ['not by a pump that draws what is usual', { pumpPowerW: 21 }, { state: { learnt } }, false],
    ['in an empty pan, whatever flows', { flowLMin: 20 }, { level: 'empty' }, true],
    [
      'not in one that fills from empty',
      { flowLMin: 20 },
      { level: 'empty', state: { phase: filling(0) } },
      false,
    ],
    ['not at rest', { flowLMin: 0 }, { state: { phase: { name: 'resting', sinceMs: 0 } } }, false],
  ])('is seen %s', (_, told, given, seen) => {
    expect(dry(told, given) !== null).toBe(seen);
  });

  const fills = (forMs: number, primingS?: number, told: Told = { flowLMin: 0 }) =>
    dry(told, { state: { phase: filling(forMs), learnt: primingS === undefined ? {} : { primingS } } }) !==
    null;

  it('has two minutes to draw water while nothing was learnt', () => {
    expect([fills(120_000), fills(120_001)]).toEqual([false, true]);
  });

  it('has three times what it took, and 10 s', () => {
    expect([fills(28_000, 6), fills(28_001, 6)]).toEqual([false, true]);
    expect([fills(120_000, 40), fills(120_001, 40)]).toEqual([false, true]);
  });

  it('has no time where water came within a third of the dry running time', () => {
    expect([fills(0, 5), fills(1, 5), fills(1, 5.01)]).toEqual([false, true, false]);
  });

  it('needs no time without power, at whatever speed', () => {
    expect(fills(0, undefined, { pumpPowerW: 0 })).toBe(true);
    const slow = { state: { outputs: { ...safeOutputs, pumpFraction: 0.5 } } };
    expect(dry({ pumpPowerW: 0 }, slow)).not.toBeNull();
  });

  it('has no time in a full loop', () => {
    const started = { ...going, sinceMs: nowMs - 1000 };
    expect(dry({ flowLMin: 0 }, { state: { phase: started } })).not.toBeNull();
  });
});

describe('a pump that has run dry', () => {
  const over = (forMs: number | null, dryRunS: number, elapsedMs = 5000) =>
    hasRunDry(
      situationOf({
        elapsedMs,
        settings: { ...quickSettings, dryRunS },
        state: { timers: { ...timers, noFlowMs: forMs === null ? null : nowMs - forMs } },
      }),
    );

  it('did so for its time, or would for more than 20 s at the next step', () => {
    expect([over(9999, 10), over(10_000, 10)]).toEqual([false, true]);
    expect([over(15_000, 60), over(15_001, 60)]).toEqual([false, true]);
    expect([over(18_000, 60, 2000), over(18_001, 60, 2000)]).toEqual([false, true]);
    expect(over(null, 0, 30_000)).toBe(false);
  });
});

describe('a pump over an open drain', () => {
  const open = (drainSays: boolean | null, phase: Phase = going, drainOpenMs: number | null = null) =>
    drainOpenSince(situationOf({ drainSays, state: { phase, timers: { ...timers, drainOpenMs } } }));

  it('is told by the device while it is to run', () => {
    expect([open(true), open(true, filling(0)), open(true, going, 7)]).toEqual([nowMs, nowMs, 7]);
    expect([open(false), open(null), open(true, { name: 'resting', sinceMs: 0 }, 7)]).toEqual([
      ...[null, null, null],
    ]);
  });
});
