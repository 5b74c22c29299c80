import { describe, expect, it } from 'vitest';
import type { CommissionMemory } from '../../../../controller/engine/commission/memory.ts';
import { updateCommission } from '../../../../controller/engine/commission/run.ts';
import type { Feedback } from '../../../../shared-types/engine.ts';
import { makeSite } from '../rig.ts';
import { type Scene, situationOf } from '../watch-rig.ts';

const nowMs = 3_600_000;
const quiet = { on: false, off: false, differed: false };
const lease = { kind: 'commission', untilMs: 9e6 } as const;
const bare = makeSite('drain-valve', ['panOutletC', 'storeBottomC']);
const since = (name: string, forMs = 0) => ({ phase: { name, sinceMs: nowMs - forMs, afterFill: false } });
const pump = (forMs: number) => ({ pump: { sinceMs: nowMs - forMs, startsMs: [], exercising: false } });
const full = { water: { level: 'full' } };
const off = { outputs: { pumpFraction: 0, drainOpen: true, drainPumpOn: false, exchangerPumpOn: false } };

function memory(changes: Partial<CommissionMemory>): CommissionMemory {
  return {
    ...{ step: 'filling', sinceMs: 0, untilMs: 9e6, fillS: null, followed: quiet, findings: [] },
    ...changes,
  };
}

interface Run extends Scene {
  readonly kept?: Partial<CommissionMemory> | null;
  readonly lease?: object | null;
  readonly hazard?: boolean;
  readonly feedback?: Feedback | null;
}

function update({ kept = {}, lease: held = lease, hazard = false, feedback = null, state, ...scene }: Run) {
  const situation = situationOf({
    ...scene,
    state: {
      commission: kept === null ? null : memory(kept),
      operator: { lease: held, seen: [] },
      ...state,
    },
  });
  return { before: situation.state, ...updateCommission(situation, hazard, feedback) };
}

const stepOf = (run: Run) => update(run).commission?.step;
const findings = (run: Run) => update(run).commission?.findings.map(({ check, result }) => [check, result]);

describe('a commissioning run', () => {
  it('is nothing without its lease', () => {
    for (const kept of [null, { step: 'done' }, { step: 'ended' }] as const) {
      const { before, commission, operator } = update({ kept, lease: null });
      expect([commission, operator]).toEqual([before.commission, before.operator]);
    }
    expect(update({ kept: null, lease: { kind: 'rest', untilMs: 5 } }).commission).toBeNull();
  });

  it.each([
    ['drain-valve', 'emptying'],
    ['corner', 'filling'],
  ] as const)('begins anew on a loop with %s by %s', (kind, step) => {
    for (const kept of [null, { step: 'done', fillS: 7 }, { step: 'ended', fillS: 7 }] as const)
      expect(update({ kept, site: makeSite(kind), state: since('resting') }).commission).toEqual({
        ...{ step, sinceMs: nowMs, untilMs: 9e6, fillS: null, followed: quiet, findings: [] },
      });
  });

  it('ends with a protection, with its lease, and with another one, which stays', () => {
    const hazard = update({ hazard: true });
    expect([hazard.commission, hazard.operator.lease]).toEqual([
      memory({ step: 'ended', sinceMs: nowMs }),
      null,
    ]);
    expect(stepOf({ lease: null })).toBe('ended');
    const other = { kind: 'rest', untilMs: 5 };
    const replaced = update({ lease: other });
    expect([replaced.commission?.step, replaced.operator.lease]).toEqual(['ended', other]);
  });

  it('goes on from emptying to filling once the pan is empty', () => {
    const kept = { step: 'emptying' } as const;
    expect(update({ kept, state: since('empty') }).commission).toEqual(memory({ sinceMs: nowMs }));
    expect(update({ kept, state: since('emptying') }).commission).toEqual(memory(kept));
  });
});

describe('what the device says in a run', () => {
  const on = { pumpFraction: 1, drainOpen: null, ageMs: 0 };
  const followed = (feedback: Feedback | null, state: object = {}, before = quiet) =>
    update({ kept: { step: 'flowing', sinceMs: nowMs, followed: before }, feedback, state }).commission
      ?.followed;
  const still = { ...on, pumpFraction: 0 };

  it.each([
    ['on as it is told', on, {}, { on: true }],
    ['off as it is told', still, { ...off, ...since('resting') }, { off: true }],
    ['off where it is to be on', still, {}, { differed: true }],
    ['on where it is to be off', on, { ...off, ...since('resting') }, { differed: true }],
    ['nothing', null, {}, {}],
    ['something just fresh', { ...on, ageMs: 60_000 }, {}, { on: true }],
    ['something stale', { ...on, ageMs: 60_001 }, {}, {}],
    ['it 30 s after a change', on, pump(30_000), { on: true }],
    ['it before that', on, pump(29_999), {}],
    ['of a time before that', { ...on, ageMs: 1000 }, pump(30_999), {}],
    ['of 30 s after a change', { ...on, ageMs: 1000 }, pump(31_000), { on: true }],
  ])('%s counts so', (_, feedback, state, then) => {
    expect(followed(feedback, state)).toEqual({ ...quiet, ...then });
  });

  it('is noted once', () => {
    const all = { on: true, off: true, differed: true };
    expect(followed(on, {}, all)).toBe(all);
    expect(followed(still, {}, all)).toBe(all);
    expect(followed(still, { ...off, ...since('resting') }, all)).toBe(all);
    const kept = memory({ step: 'flowing', sinceMs: nowMs, followed: all });
    const state = { commission: kept };
    expect(update({ feedback: on, state }).commission).toBe(kept);
  });
});

describe('the fill of a run', () => {
  const filling = (forMs: number) => ({ ...since('filling', forMs), ...pump(forMs) });
  const going = (forMs: number) => ({ ...since('circulating'), ...pump(forMs), ...full });
  const fillS = (run: Run) => update(run).commission?.fillS;
  const metered = { panLevelMm: 40 };

  it('is timed from the start of the pump, when the level says full', () => {
    const state = { ...filling(150_000), ...full };
    expect(fillS({ values: metered, state })).toBe(150);
    expect(fillS({ values: metered, state, kept: { fillS: 90 } })).toBe(90);
    expect(fillS({ values: metered, state: { ...state, water: { level: 'part' } } })).toBeNull();
    expect(fillS({ values: metered, state: { ...state, ...since('resting') } })).toBeNull();
    expect(fillS({ values: metered, state, site: makeSite('corner') })).toBeNull();
  });

  it('is timed when a person sees it, where no level does', () => {
    const seen = { ...lease, confirmed: true };
    const state = filling(150_000);
    expect(fillS({ site: bare, state, lease: seen })).toBe(150);
    expect(fillS({ site: bare, state })).toBeNull();
    expect(fillS({ state: { ...state, water: { level: 'part' } }, lease: seen, values: metered })).toBeNull();
  });

  it('is timed when a flow that is good has moved what the pan holds, where it holds it', () => {
    const moved = (filledL: number) => ({ ...filling(150_000), meter: { filledL, rateW: null } });
    const values = { flowLMin: 20 };
    expect(fillS({ values, state: moved(400) })).toBe(150);
    expect(fillS({ values, state: moved(399.9) })).toBeNull();
    expect(fillS({ state: moved(400) })).toBeNull();
    expect(fillS({ values, state: moved(400), site: makeSite('pump-stop') })).toBeNull();
  });

  it('is waited for while water goes round, up to the fill timeout', () => {
    expect(stepOf({ state: going(199_999), site: bare })).toBe('filling');
    expect(stepOf({ state: filling(200_000), site: bare })).toBe('filling');
    const late = { state: going(200_000), site: bare };
    expect(update(late).commission).toEqual(
      memory({
        ...{ step: 'flowing', sinceMs: nowMs },
        findings: [{ check: 'fill-time', result: 'by-hand', values: {} }],
      }),
    );
    expect(update(late).learnt).toEqual({});
    expect(stepOf({ state: going(0), site: makeSite('corner') })).toBe('flowing');
  });

  it('is learnt once it was seen', () => {
    const { commission, learnt } = update({
      kept: { fillS: 90 },
      state: { ...going(95_000), learnt: { primingS: 4 } },
    });
    expect(commission?.findings).toEqual([{ check: 'fill-time', result: 'passed', values: { seconds: 90 } }]);
    expect(learnt).toEqual({ primingS: 4, fillTimeS: 90 });
  });

  it('takes what a person saw once', () => {
    const seen = { ...lease, confirmed: true };
    expect(update({ site: bare, state: filling(9000), lease: seen }).operator.lease).toEqual({
      ...lease,
      confirmed: false,
    });
    const waiting = update({ kept: { step: 'emptying' }, state: since('emptying'), lease: seen });
    expect(waiting.operator).toBe(waiting.before.operator);
    const next = update({ kept: { step: 'emptying' }, state: since('empty'), lease: seen });
    expect(next.operator.lease?.confirmed).toBe(false);
    expect(update({ state: filling(9000) }).operator.lease).toEqual(lease);
  });
});

describe('the flow of a run', () => {
  const flowing = (forMs: number, state: object = {}): Run => ({
    kept: { step: 'flowing', sinceMs: nowMs - forMs },
    state,
  });

  it('is judged after its time, in circulation', () => {
    expect(stepOf(flowing(3_599_999))).toBe('flowing');
    expect(stepOf(flowing(3_600_000, since('resting')))).toBe('flowing');
    expect(stepOf(flowing(3_600_000))).toBe('draining');
    expect(findings(flowing(3_600_000))).toEqual([
      ['pump-direction', 'by-hand'],
      ['sensors-agree', 'by-hand'],
    ]);
  });

  it('ends the run of a pan that cannot be emptied, with what the device did', () => {
    const run = { ...flowing(3_600_000), site: makeSite('corner') };
    const { commission, operator, learnt } = update(run);
    expect([commission?.step, commission?.sinceMs, operator.lease, learnt]).toEqual([
      'done',
      nowMs,
      null,
      {},
    ]);
    expect(findings(run)?.map(([check]) => check)).toEqual([
      ...['pump-direction', 'sensors-agree', 'outputs-follow', 'outputs-drop'],
    ]);
  });

  it('in the dark compares the pair, and keeps what that shows', () => {
    const watch = { darkMs: 0, evidence: {}, doubts: {}, still: {} };
    const run = {
      ...flowing(3_600_000, { watch }),
      ...{ site: bare, values: { panOutletC: 20, storeBottomC: 20, ambientC: 20 } },
    };
    const { learnt } = update(run);
    expect(learnt).toHaveProperty('outletOffsetK');
    expect(findings(run)?.[1]).toEqual(['sensors-agree', 'passed']);
  });
});

describe('the emptying of a run', () => {
  const draining = (forMs: number, more: Run = {}): Run => ({
    kept: { step: 'draining' },
    ...more,
    state: { ...since('emptying'), ...pump(forMs), ...off, ...more.state },
  });
  const seen = { ...lease, confirmed: true };
  const outcome = (run: Run) => {
    const { commission, learnt } = update(run);
    return [commission?.findings[0], learnt['drainTimeS']];
  };
  const passed = (seconds: number) => ({ check: 'drain-time', result: 'passed', values: { seconds } });

  it('is timed from the stop of the pump to the last film, or to what a person saw', () => {
    expect(outcome(draining(70_000, { values: { panLevelMm: 2 } }))).toEqual([passed(70), 70]);
    expect(stepOf(draining(70_000, { values: { panLevelMm: 2.1 } }))).toBe('draining');
    expect(outcome(draining(70_000, { lease: seen }))).toEqual([passed(70), 70]);
    expect(stepOf(draining(70_000, { lease: seen, values: { panLevelMm: 12 } }))).toBe('draining');
    expect(stepOf(draining(70_000))).toBe('draining');
  });

  it('has not begun while the pump runs, nor at the step at which it stops', () => {
    const values = { panLevelMm: 0 };
    expect(stepOf(draining(0, { values }))).toBe('draining');
    expect(stepOf(draining(1, { values }))).toBe('done');
    expect(stepOf(draining(900_000, { values, state: since('circulating') }))).toBe('draining');
  });

  it('is given twice the drain time', () => {
    expect(stepOf(draining(119_999))).toBe('draining');
    expect(outcome(draining(120_000))).toEqual([
      { check: 'drain-time', result: 'by-hand', values: {} },
      undefined,
    ]);
    expect(outcome(draining(120_000, { values: { panLevelMm: 12 } }))).toEqual([
      { check: 'drain-time', result: 'failed', values: { levelMm: 12 } },
      undefined,
    ]);
  });
});
