import { describe, expect, it } from 'vitest';
import { noFlowKindText } from '../../../controller/engine/explain/no-flow-text.ts';
import { noFlowSince } from '../../../controller/engine/hazards/no-flow.ts';
import { lowSince, updateFlowLow } from '../../../controller/engine/watch/flow-low.ts';
import { updateSmoothed } from '../../../controller/engine/watch/flow-share.ts';
import { learnFlow, learnPriming } from '../../../controller/engine/watch/learn-flow.ts';
import { calmFlow, newUpkeep } from '../../../controller/engine/watch/memory.ts';
import { noFlowKindOf, noFlowKinds } from '../../../controller/engine/watch/no-flow-kind.ts';
import { powerSays, takenSince } from '../../../controller/engine/watch/pump-signs.ts';
import { runsOn, seenRunning } from '../../../controller/engine/watch/runs-on.ts';
import { makeSite } from './rig.ts';
import { flowLoop, level, situationOf } from './watch-rig.ts';

const learnt = { fullFlowLMin: 20, fullPowerW: 40 };
const half = { outputs: { pumpFraction: 0.5, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false } };
const filling = { phase: { name: 'filling', sinceMs: 3_600_000 - 60_000 } };

describe('the power of a running pump', () => {
  it.each([
    [2.4, {}, 'none'],
    [2.5, {}, 'usual'],
    [19.9, { learnt }, 'low'],
    [20, { learnt }, 'usual'],
    [2.4, { learnt }, 'none'],
    // At half the speed 0.2 + 0.8 / 8 of the power is left.
    [5.9, { learnt, ...half }, 'low'],
    [6.1, { learnt, ...half }, 'usual'],
  ] as const)('of %d W, knowing %o, is %s', (pumpPowerW, state, said) => {
    expect(powerSays(situationOf({ state, values: { pumpPowerW } }))).toBe(said);
  });

  it('tells nothing where it is not measured, is doubtful, or was measured before the pump started', () => {
    expect(powerSays(situationOf())).toBeNull();
    const doubtful = { quality: 'doubtful', value: 0, ageMs: 0, cause: 'jumped' } as const;
    expect(powerSays(situationOf({ values: { pumpPowerW: doubtful } }))).toBeNull();
    const old = { quality: 'good', value: 0, ageMs: 5001 } as const;
    const state = { pump: { sinceMs: 3_595_000, startsMs: [] } };
    expect(powerSays(situationOf({ state, values: { pumpPowerW: old } }))).toBeNull();
    expect(powerSays(situationOf({ state, values: { pumpPowerW: { ...old, ageMs: 5000 } } }))).toBe('none');
  });

  it('and every other reading counts from when it was taken', () => {
    const situation = situationOf({ state: { pump: { sinceMs: 3_590_000, startsMs: [] } } });
    const reading = { quality: 'good', value: 1, ageMs: 4000 } as const;
    expect(takenSince(reading, situation, 6000)).toBe(reading);
    expect(takenSince(reading, situation, 6001)).toBeUndefined();
    expect(takenSince({ quality: 'failed', cause: 'stale' }, situation)).toBeUndefined();
    expect(takenSince(undefined, situation)).toBeUndefined();
  });
});

describe('why no water moves', () => {
  it.each([
    [{}, {}, 'unknown'],
    [{ pumpPowerW: 0 }, {}, 'dead'],
    [{ pumpPowerW: 10 }, {}, 'unknown'],
    [{ pumpPowerW: 10 }, { learnt }, 'air'],
    [{ pumpPowerW: 30 }, { learnt }, 'shut'],
    [{ flowLMin: -2, pumpPowerW: 40 }, { learnt }, 'reversed'],
    [{ flowLMin: -1.9, pumpPowerW: 40 }, { learnt }, 'shut'],
  ] as const)('is told from %o, knowing %o: %s', (values, state, kind) => {
    expect(noFlowKindOf(situationOf({ state, values }))).toBe(noFlowKinds[kind]);
  });

  it('has words of its own for each kind', () => {
    const words = Object.values(noFlowKinds).map(noFlowKindText);
    expect(new Set(words).size).toBe(words.length);
    expect(words).not.toContain('');
    expect(noFlowKindText(9)).toBe('');
  });

  it('is said with the stop', () => {
    const loop = flowLoop(20, 10).set({ flowLMin: 0, pumpPowerW: 0 }).run(20);
    expect(loop.alarm('dry-running')?.text).toContain('the pump draws no power');
    expect(
      loop.decisions.some(({ reasons }) => reasons.phase.text.endsWith('the pump draws no power.')),
    ).toBe(true);
  });
});

describe('a pump that runs dry', () => {
  const dry = (values: object, state: object = {}) =>
    noFlowSince(situationOf({ values: values as never, state })) !== null;

  it.each([
    [{ flowLMin: 1.9 }, {}, true],
    [{ flowLMin: 2 }, {}, false],
    [{ flowLMin: 0.9 }, half, true],
    [{ flowLMin: 1 }, half, false],
    [{ pumpPowerW: 0 }, {}, true],
    [{ pumpPowerW: 0, flowLMin: 20 }, {}, false],
    [{ pumpPowerW: 10 }, { learnt }, true],
    [{ pumpPowerW: 10 }, {}, false],
    [{}, {}, false],
    [{}, { water: { level: 'empty' } }, true],
  ])('is told from %o in a state of %o: %o', (values, state, told) => {
    expect(dry(values, state)).toBe(told);
  });

  it('is not called so by a doubtful flow that is high, and is by one that is low', () => {
    expect(dry({ flowLMin: { quality: 'doubtful', value: 20, ageMs: 0, cause: 'jumped' } })).toBe(false);
    expect(dry({ flowLMin: { quality: 'doubtful', value: 0, ageMs: 0, cause: 'jumped' } })).toBe(true);
  });

  it.each([
    ['was never filled before', {}, 120_000, 120_001],
    ['took 6 s before', { primingS: 6 }, 28_000, 28_001],
    ['took 60 s before', { primingS: 60 }, 120_000, 120_001],
  ])('is given time to draw water where it %s', (_, known, given, over) => {
    const at = (forMs: number) =>
      dry({ flowLMin: 0 }, { learnt: known, phase: { name: 'filling', sinceMs: 3_600_000 - forMs } });
    expect([at(given), at(over)]).toEqual([false, true]);
  });

  it('is given none where water came within a third of the dry running time, nor without power', () => {
    expect(dry({ flowLMin: 0 }, { learnt: { primingS: 5 }, ...filling })).toBe(true);
    expect(dry({ flowLMin: 0 }, { learnt: { primingS: 5.1 }, ...filling })).toBe(true);
    const soon = { phase: { name: 'filling', sinceMs: 3_595_000 } };
    expect(dry({ flowLMin: 0 }, { learnt: { primingS: 5.1 }, ...soon })).toBe(false);
    expect(dry({ flowLMin: 0 }, { learnt: { primingS: 5 }, ...soon })).toBe(true);
    expect(dry({ pumpPowerW: 0 }, soon)).toBe(true);
    expect(dry({ pumpPowerW: 10 }, { learnt, ...soon })).toBe(false);
  });
});

describe('a pump that is off', () => {
  const off = { outputs: { pumpFraction: 0, drainOpen: true, drainPumpOn: false, exchangerPumpOn: false } };
  const seen = (values: object, feedback: object | null = null, site = level, state: object = {}) => {
    const situation = situationOf({ site, values: values as never, state: { ...off, ...state } });
    return seenRunning({ ...situation, feedback: feedback as never });
  };
  const running = { pumpFraction: 1, drainOpen: null, ageMs: 0 };

  it.each([
    ['power of 10 W', { pumpPowerW: 10 }, null, true],
    ['power of 9.9 W', { pumpPowerW: 9.9 }, running, false],
    ['flow of 4 L/min', { flowLMin: 4 }, null, true],
    ['flow of 3.9 L/min', { flowLMin: 3.9 }, null, false],
    ['no flow, though the device says so', { flowLMin: 0.9 }, running, false],
    ['little flow, and the device', { flowLMin: 1 }, running, true],
    ['the device', {}, running, true],
    ['the device, a minute ago', {}, { ...running, ageMs: 60_000 }, true],
    ['the device, longer ago', {}, { ...running, ageMs: 60_001 }, false],
    ['nothing', {}, null, false],
  ])('is seen to run by %s, or not', (_, values, feedback, told) => {
    expect(seen(values, feedback)).toBe(told);
  });

  it('has its time to stop', () => {
    const since = (sinceMs: number) => ({ pump: { sinceMs, startsMs: [] } });
    expect(seen({ pumpPowerW: 50 }, null, level, since(3_590_000))).toBe(true);
    expect(seen({ pumpPowerW: 50 }, null, level, since(3_590_001))).toBe(false);
    expect(seen({}, running, level, since(3_590_000))).toBe(true);
    expect(seen({}, running, level, since(3_590_001))).toBe(false);
    expect(seen({ flowLMin: 20 }, null, level, since(3_540_000))).toBe(true);
    expect(seen({ flowLMin: 20 }, null, level, since(3_540_001))).toBe(false);
  });

  it('is not taken to run by what runs back through it', () => {
    const site = makeSite('pump-stop', ['panSheetC', 'storeBottomC', 'flowLMin']);
    expect(seen({ flowLMin: 15 }, null, site)).toBe(false);
    expect(seen({ flowLMin: 15 }, null, site, { water: { level: 'empty' } })).toBe(true);
  });

  it('is no such pump while it is to run', () => {
    const situation = situationOf({ values: { pumpPowerW: 50 } });
    expect(seenRunning({ ...situation, feedback: running as never })).toBe(false);
  });

  it('runs on once that was seen for 20 s', () => {
    const at = (runsOnMs: number | null) =>
      runsOn(situationOf({ state: { flow: { ...calmFlow, runsOnMs } } }));
    expect([at(3_580_000), at(3_580_001), at(null)]).toEqual([true, false, false]);
  });
});

describe('the flow at full speed', () => {
  const values = { flowLMin: 18, pumpPowerW: 45 };

  it('is smoothed once it has settled for five minutes', () => {
    const early = situationOf({ values, state: { phase: { name: 'circulating', sinceMs: 3_300_001 } } });
    expect(updateSmoothed(calmFlow, early)).toEqual({ flowLMin: null, powerW: null, smoothedMs: 0 });
    const settled = situationOf({ values, state: { phase: { name: 'circulating', sinceMs: 3_300_000 } } });
    expect(updateSmoothed(calmFlow, settled)).toEqual({ flowLMin: 18, powerW: 45, smoothedMs: 5000 });
    const before = { ...calmFlow, flowLMin: 20, powerW: 40, smoothedMs: 10_000 };
    const after = updateSmoothed(before, settled);
    expect(after.flowLMin).toBeCloseTo(20 - (2 * 5) / 305, 9);
    expect(after.powerW).toBeCloseTo(40 + (5 * 5) / 305, 9);
    expect(after.smoothedMs).toBe(15_000);
  });

  it('begins a new stretch after ten minutes, and counts at no other speed', () => {
    const situation = situationOf({ values });
    expect(updateSmoothed({ ...calmFlow, smoothedMs: 599_999 }, situation).smoothedMs).toBe(604_999);
    expect(updateSmoothed({ ...calmFlow, smoothedMs: 600_000 }, situation).smoothedMs).toBe(5000);
    const slow = { ...half.outputs, pumpFraction: 0.98 };
    expect(updateSmoothed(calmFlow, situationOf({ values, state: { outputs: slow } })).flowLMin).toBeNull();
    const fast = { ...slow, pumpFraction: 0.99 };
    expect(updateSmoothed(calmFlow, situationOf({ values, state: { outputs: fast } })).flowLMin).toBe(18);
    const resting = { phase: { name: 'resting', sinceMs: 0 } };
    expect(updateSmoothed(calmFlow, situationOf({ values, state: resting })).flowLMin).toBeNull();
    expect(updateSmoothed(calmFlow, situationOf()).flowLMin).toBeNull();
  });

  const lesson = (
    known: object,
    flowLMin: number | null,
    powerW: number | null = null,
    more: object = {},
  ) => {
    const flow = { ...calmFlow, flowLMin, powerW, smoothedMs: 600_000 };
    return learnFlow(known as never, situationOf({ state: { flow, learnt: known, ...more } }));
  };

  it.each([
    [{}, 12, 12],
    [{}, 11.9, undefined],
    [{}, 32, 32],
    [{}, 32.1, undefined],
    [{ fullFlowLMin: 20 }, 21, 20.2],
    [{ fullFlowLMin: 20 }, 19, 19.99],
    [{ fullFlowLMin: 20 }, 18.9, 20],
  ])('is learnt, knowing %o, from %d L/min: %o', (known, flowLMin, then) => {
    const { fullFlowLMin } = lesson(known, flowLMin);
    if (then === undefined) expect(fullFlowLMin).toBeUndefined();
    else expect(fullFlowLMin).toBeCloseTo(then, 12);
  });

  it('is learnt with the power beside it, of a healthy flow alone', () => {
    expect(lesson({ fullFlowLMin: 20 }, 20, 50)).toEqual({ fullFlowLMin: 20, fullPowerW: 50 });
    expect(lesson({ fullFlowLMin: 20, fullPowerW: 40 }, 20, 45)['fullPowerW']).toBeCloseTo(41, 12);
    expect(lesson({ fullFlowLMin: 20, fullPowerW: 40 }, 20, 38)['fullPowerW']).toBeCloseTo(39.98, 12);
    expect(lesson({ fullFlowLMin: 20, fullPowerW: 40 }, 20, 37.9)['fullPowerW']).toBe(40);
    expect(lesson({ fullFlowLMin: 20 }, 18.9, 50)['fullPowerW']).toBeUndefined();
    expect(lesson({}, 11, 50)['fullPowerW']).toBeUndefined();
    expect(lesson({}, null, 50)).toEqual({ fullPowerW: 50 });
    expect(lesson({}, null, 0)).toEqual({});
  });

  it('is learnt of a full loop after ten minutes, and of nothing else', () => {
    const known = {};
    expect(lesson(known, 20, 50, { phase: { name: 'filling', sinceMs: 0 } })).toBe(known);
    expect(lesson(known, null)).toBe(known);
    const flow = { ...calmFlow, flowLMin: 20, smoothedMs: 599_999 };
    expect(learnFlow(known, situationOf({ state: { flow } }))).toBe(known);
  });

  it('comes the later the longer the longest wait for it was', () => {
    const at = (known: object) => learnPriming(known as never, situationOf({ state: { ...filling } }));
    expect(at({})).toEqual({ primingS: 60 });
    expect(at({ primingS: 59 })).toEqual({ primingS: 60 });
    const longer = { primingS: 60 };
    expect(at(longer)).toBe(longer);
  });
});

describe('a low flow', () => {
  const since = (flowLMin: number | null, state: object = {}) =>
    lowSince(7, flowLMin, situationOf({ state: { learnt, ...state } }));

  it('is less than 0.7 of the full one, or than 0.55 while the pan fills', () => {
    expect([since(13.9), since(14), since(null)]).toEqual([7, null, null]);
    expect([since(10.9, filling), since(11, filling)]).toEqual([7, null]);
    expect(since(13.9, { learnt: {} })).toBe(7);
  });

  const judge = (flow: object, lowFlowLMin: number | null, state: object = {}) => {
    const now = { ...calmFlow, smoothedMs: 300_000, ...flow };
    return updateFlowLow(
      { ...newUpkeep, lowFlowLMin },
      situationOf({ state: { learnt, flow: now, ...state } }),
    ).lowFlowLMin;
  };

  it('is told after ten minutes, and anew when it falls further', () => {
    expect(judge({ flowLMin: 10, lowMs: 3_000_001 }, null)).toBeNull();
    expect(judge({ flowLMin: 10, lowMs: 3_000_000 }, null)).toBe(10);
    expect(judge({ flowLMin: 8, lowMs: 3_000_000 }, 10)).toBe(10);
    expect(judge({ flowLMin: 7.9, lowMs: 3_000_000 }, 10)).toBe(7.9);
    expect(judge({ flowLMin: null, lowMs: 3_000_000 }, null)).toBeNull();
  });

  it('is over at 0.8 of the full one in a full loop, after five minutes', () => {
    expect(judge({ flowLMin: 15.9 }, 10)).toBe(10);
    expect(judge({ flowLMin: 16 }, 10)).toBeNull();
    expect(judge({ flowLMin: 16, smoothedMs: 299_999 }, 10)).toBe(10);
    expect(judge({ flowLMin: 20 }, 10, filling)).toBe(10);
  });

  it('raises its alarm, which returns with the flow', () => {
    const loop = flowLoop(10, 800);
    expect(loop.alarm('flow-low')).toBeUndefined();
    loop.run(300, 10);
    expect(loop.alarm('flow-low')).toMatchObject({ active: true, priority: 'when-convenient' });
    expect(loop.alarm('flow-low')?.text).toMatch(
      /^Less water flows than it should\. 1\d\.\d of 20\.0 L\/min pass\.$/,
    );
    loop.set({ flowLMin: 20 }).run(1200, 10);
    expect(loop.alarm('flow-low')).toMatchObject({ active: false });
  });
});
