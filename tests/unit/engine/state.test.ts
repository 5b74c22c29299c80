import { describe, expect, it } from 'vitest';
import {
  engineVersion,
  initialState,
  outcomeOf,
  reviveState,
  safeOutputs,
  step,
} from '../../../controller/engine/index.ts';
import { assertSafe } from '../../../controller/engine/outputs.ts';
import type { EngineInput } from '../../../shared-types/engine.ts';
import { decisionSchema } from '../../../shared-types/engine.ts';
import { outcomeSchema } from '../../../shared-types/log.ts';
import { circulatingLoop, disturb, Loop, makeSite, quickSettings, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');

/** Every state into which one value of `json` is broken. */
function* brokenCopies(json: object): Generator<unknown> {
  for (const path of paths(json))
    for (const value of ['?', null, -1, [], {}]) yield disturb(json, path, value);
}

function paths(json: unknown, before: readonly string[] = []): (readonly string[])[] {
  if (typeof json !== 'object' || json === null) return before.length === 0 ? [] : [before];
  return [
    ...(before.length === 0 ? [] : [before]),
    ...Object.entries(json).flatMap(([key, value]) => paths(value, [...before, key])),
  ];
}

describe('the state', () => {
  it('is plain JSON that is taken up as it was', () => {
    const { state } = circulatingLoop(site).run(60);
    const revived = reviveState(JSON.parse(JSON.stringify(state)));
    expect(revived).toEqual(state);
    expect(reviveState(initialState())).toEqual(initialState());
  });

  it('begins with nothing seen, nothing asked and nothing found', () => {
    expect(initialState()).toMatchObject({
      stepped: false,
      water: { level: 'unknown', overdue: false },
      pump: { startsMs: [], exercising: false },
      frost: { latched: null, storeCold: false },
      airLows: { daysC: [] },
      heat: { storeFull: false, linerHot: false, cooling: false },
      operator: { lease: null, seen: [] },
    });
    const safe = { pumpFraction: 0, drainOpen: true, drainPumpOn: false, exchangerPumpOn: false };
    expect(safeOutputs).toStrictEqual(safe);
    expect(initialState().outputs).toBe(safeOutputs);
  });

  it('of another version, or of no version, is not taken up', () => {
    for (const other of [
      null,
      undefined,
      7,
      'state',
      [],
      {},
      { version: 1 },
      { ...initialState(), version: 0 },
    ])
      expect(reviveState(other)).toBeUndefined();
  });

  it('of a version before goes on with its totals and what was learnt', () => {
    const { state } = circulatingLoop(site).run(60);
    const now = { ...state, learnt: { drainTimeS: 240 }, failure: { count: 2, cause: null } };
    const { airFellFromC: _, airCameBack: __, ...newer } = now.harvest;
    const { inGap: ___, airMeanC, ...harvest } = newer;
    const old = { ...now, version: 3, harvest };
    const revived = (saved: unknown) => reviveState(JSON.parse(JSON.stringify(saved)));
    const unknown = { inGap: false, airMeanC: null, airFellFromC: null, airCameBack: false };
    expect(revived(old)).toStrictEqual({ ...now, harvest: { ...now.harvest, ...unknown } });
    expect(revived({ ...now, version: 4, harvest: newer })).toStrictEqual({
      ...now,
      harvest: { ...now.harvest, airFellFromC: null, airCameBack: false },
    });
    expect(airMeanC).not.toBeNull();
    expect(now.meter.total.pumpRunS).toBeGreaterThan(0);
    for (const broken of [
      { ...old, version: 2 },
      { ...old, version: 5 },
      { ...old, version: 6 },
      { ...old, harvest: null },
      { ...old, learnt: { strangeS: 1 } },
    ])
      expect(reviveState(broken)).toBeUndefined();
  });

  it('with a broken part is not taken up, or steps without doing harm', () => {
    const loop = circulatingLoop(site).run(60);
    loop.feedback = { pumpFraction: 0, drainOpen: true, ageMs: 0 };
    loop.run(60);
    let refused = 0;
    for (const broken of brokenCopies(loop.state)) {
      if (reviveState(broken) === undefined) refused++;
      const copy = new Loop(site);
      copy.step().state = broken as typeof loop.state;
      const { outputs } = copy.step().last;
      expect(outputs.pumpFraction > 0 && outputs.drainOpen).toBe(false);
    }
    expect(refused).toBeGreaterThan(200);
  });

  it.each([
    [['outputs', 'pumpFraction'], 7e305],
    [['outputs', 'pumpFraction'], 1.01],
    [['meter', 'rateW'], 1e300],
  ])('with %o of %d, whose totals would run over, is not taken up', (path, value) => {
    const { state } = circulatingLoop(site).run(60);
    expect(reviveState(disturb(state, path, value))).toBeUndefined();
  });

  it('is changed by no step', () => {
    const loop = circulatingLoop(site);
    const before = JSON.stringify(loop.state);
    const { state } = loop;
    loop.set({ panOutletC: 2 }).run(60);
    expect(JSON.stringify(state)).toBe(before);
  });
});

describe('a failure of the engine itself', () => {
  it.each([null, {}, 'nonsense', { version: 1 }])(
    'on the state %o gives safe outputs and says so',
    (state) => {
      const loop = new Loop(site).step();
      loop.state = state as unknown as typeof loop.state;
      const { decision } = { decision: loop.step().last };
      expect(decision.outputs).toEqual(safeOutputs);
      expect(decision.reasons).toMatchObject({
        phase: { code: 'internal-error' },
        pump: { code: 'internal-error' },
        drain: { code: 'internal-error' },
      });
      expect(loop.alarm('internal-error')).toMatchObject({ active: true, priority: 'urgent' });
      expect(decisionSchema.safeParse(decision).error).toBeUndefined();
      loop.until('empty');
    },
  );

  it('keeps totals, starts anew at the next step, and lets the alarm return', () => {
    const loop = circulatingLoop(site).run(60);
    const { total } = loop.last.meter;
    const broken = { ...site, pan: undefined } as unknown as typeof site;
    const input = {
      nowMs: loop.nowMs,
      elapsedMs: 5000,
      localDay: '2031-06-21',
      readings: {},
      feedback: null,
    };
    const failed = step(
      loop.state,
      { ...input, request: { id: 'hello-there' } } as never,
      broken,
      quickSettings,
    );
    expect(failed.decision).toMatchObject({ outputs: safeOutputs, meter: { total }, phase: 'emptying' });
    expect(failed.decision.answer).toMatchObject({ id: 'hello-there', accepted: false });
    const again = step(failed.state, { ...input, request: {} } as never, broken, quickSettings);
    expect(again.decision.alarms).toMatchObject([{ code: 'internal-error', sinceMs: loop.nowMs }]);
    expect(again.decision.answer).toMatchObject({ id: '' });
    loop.state = again.state;
    loop.step();
    expect([loop.phase, loop.why]).toEqual(['emptying', 'start-up-proving']);
    expect(loop.last.meter.total).toEqual(total);
    loop.run(605);
    expect(loop.alarm('internal-error')).toMatchObject({ state: 'returned-unacknowledged' });
  });

  it('stays locked when it was', () => {
    const loop = restingLoop(site);
    const state = { ...loop.state, phase: { name: 'stopped' as const, sinceMs: 0 } };
    expect(step(state, {} as EngineInput, {} as typeof site, quickSettings).decision.phase).toBe('stopped');
  });
});

describe('outputs that must never be', () => {
  const pumping = { ...safeOutputs, pumpFraction: 1, drainOpen: false };
  it.each([
    [{ ...pumping, drainOpen: true }, 'pump into an open drain'],
    [{ ...pumping, drainPumpOn: true }, 'pump against the drain pump'],
    [{ ...pumping, pumpFraction: 1.01 }, 'pump fraction out of range'],
    [{ ...pumping, pumpFraction: Number.NaN }, 'pump fraction out of range'],
  ])('%o are refused', (outputs, message) => {
    expect(() => assertSafe(outputs, site)).toThrow(message);
    expect(() => assertSafe(pumping, site)).not.toThrow();
  });
});

describe('an input', () => {
  it.each([null, 7, [], {}, { elapsedMs: -5 }, { elapsedMs: '5', readings: 'none', feedback: 3 }])(
    'that is %o gives safe outputs',
    (input) => {
      const { state } = circulatingLoop(site);
      const { decision } = step(state, input as unknown as EngineInput, site, quickSettings);
      expect(decision.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
      expect(decision.reasons.phase.code).not.toBe('internal-error');
    },
  );

  it('without a day keeps the day before', () => {
    const loop = circulatingLoop(site);
    const { today } = loop.last.meter;
    loop.localDay = 'tomorrow';
    expect(loop.step().last.meter.today.starts).toBe(today.starts);
  });
});

describe('what is logged and told', () => {
  it('keeps to the shared shapes', () => {
    const loop = restingLoop(site).without('ambientC').set({ panSheetC: 3 }).run(200);
    for (const decision of loop.decisions) {
      expect(decisionSchema.safeParse(decision).error).toBeUndefined();
      expect(outcomeSchema.safeParse(outcomeOf(decision)).error).toBeUndefined();
    }
    const outcome = outcomeOf(loop.last);
    expect(outcome.failed).toEqual(['ambientC']);
    expect(outcome.alarms).toEqual(['sensor-failed']);
    expect(outcome.reasons.drain).toBe(loop.last.reasons.drain.code);
  });

  it('leaves alarms out that have returned', () => {
    const loop = restingLoop(site).without('ambientC').run(200).set({ ambientC: 15 }).run(200);
    expect(loop.alarm('sensor-failed')).toMatchObject({ active: false });
    expect(outcomeOf(loop.last).alarms).toEqual([]);
  });

  it('names the version of the rules', () => {
    expect(engineVersion).toMatch(/^\d+\.\d+\.\d+$/);
  });
});
