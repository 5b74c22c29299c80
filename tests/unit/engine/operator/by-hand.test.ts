import { describe, expect, it } from 'vitest';
import { commissionMs } from '../../../../controller/engine/commission/demand.ts';
import type { CommissionMemory } from '../../../../controller/engine/commission/memory.ts';
import { hear } from '../../../../controller/engine/operator/hear.ts';
import { leaseCommand } from '../../../../controller/engine/operator/lease.ts';
import type { Command } from '../../../../controller/engine/situation.ts';
import type { AlarmMemory, EngineState, Lease, WaterLevel } from '../../../../controller/engine/state.ts';
import { makeSite, type SiteKind } from '../rig.ts';
import { commandOf, nowMs, situationOf } from '../situations.ts';

interface Given {
  readonly state?: Partial<EngineState>;
  readonly kind?: SiteKind;
  readonly level?: WaterLevel;
  readonly hazard?: Command | null;
}

function ask(
  operation: object,
  { state = {}, kind = 'drain-valve', level = 'full', hazard = null }: Given = {},
) {
  const request = { id: 'request-1', ageMs: 5, lifeMs: 5000, operation };
  const phase = { name: 'resting', sinceMs: 0 } as const;
  const situation = situationOf({ state: { phase, ...state }, level, site: makeSite(kind) });
  return hear(request, situation, 5_000_000_000, hazard);
}
const codeOf = (operation: object, given: Given) => ask(operation, given).answer?.code;

describe('a pan that was emptied by hand', () => {
  const empty = { kind: 'empty' };

  it('is believed empty where the loop cannot empty it', () => {
    const { slots, answer } = ask(empty, { kind: 'corner' });
    expect(answer).toStrictEqual({
      id: 'request-1',
      accepted: true,
      code: 'accepted',
      text: 'Accepted.',
    });
    expect(slots.water).toEqual({ ...situationOf().state.water, level: 'empty' });
    expect(slots.operator).toEqual({ lease: null, seen: ['request-1'] });
  });

  it.each<[string, Given, string]>([
    ['a protection runs the pump', { hazard: commandOf('run') }, 'hazard-forbids'],
    ['a protection demands the same', { hazard: commandOf('empty') }, 'accepted'],
    ['the pump runs', { state: { phase: { name: 'filling', sinceMs: 0 } } }, 'not-possible-here'],
    ['it is known to be so', { level: 'empty' }, 'nothing-to-do'],
  ])('while %s: %s', (_, given, code) => {
    expect(codeOf(empty, { kind: 'corner', ...given })).toBe(code);
  });
});

const lease: Lease = { kind: 'commission', untilMs: nowMs + 600_000 };
const operator = { lease, seen: [] };
const run: CommissionMemory = {
  step: 'draining',
  sinceMs: 0,
  untilMs: nowMs + 600_000,
  fillS: null,
  followed: { on: false, off: false, differed: false },
  findings: [],
};

describe('a commissioning run', () => {
  it('is a lease for as long as it may take, but not beside a protection', () => {
    const leaseMs = commissionMs(situationOf());
    const { slots, answer } = ask({ kind: 'commission' });
    expect(answer).toMatchObject({ accepted: true, leaseMs });
    expect(slots.operator.lease).toEqual({ kind: 'commission', untilMs: nowMs + leaseMs });
    expect(ask({ kind: 'commission' }, { hazard: commandOf('empty') }).answer).toMatchObject({
      accepted: false,
      code: 'hazard-forbids',
    });
  });

  it('demands its own steps', () => {
    const state = { operator, commission: run };
    expect(leaseCommand(situationOf({ state }))).toEqual({
      goal: 'empty',
      cause: { code: 'commissioning-draining', values: { leftMin: 10 } },
      urgent: false,
      by: 'operator',
    });
  });

  it('hears that the pan was seen', () => {
    const { slots, answer } = ask({ kind: 'confirm' }, { state: { operator, commission: run } });
    expect(answer).toStrictEqual({ id: 'request-1', accepted: true, code: 'accepted', text: 'Accepted.' });
    expect(slots.operator).toEqual({ lease: { ...lease, confirmed: true }, seen: ['request-1'] });
  });

  it.each<[string, Partial<EngineState>]>([
    ['waits for something else', { operator, commission: { ...run, step: 'filling' } }],
    ['is not asked for', { operator: { ...operator, lease: null }, commission: run }],
    [
      'gave way to another',
      { operator: { ...operator, lease: { ...lease, kind: 'rest' } }, commission: run },
    ],
    ['never was', { operator, commission: null }],
  ])('that %s hears nothing', (_, state) => {
    const { slots, answer } = ask({ kind: 'confirm' }, { state });
    expect(answer).toMatchObject({ accepted: false, code: 'nothing-to-do' });
    expect(slots.operator.lease).toBe(state.operator?.lease);
  });
});

describe('a return to automatic', () => {
  it.each<[string, Partial<EngineState>, string]>([
    ['a lease', { operator }, 'accepted'],
    ['a failure', { failure: { count: 1, cause: 'no-flow' } }, 'accepted'],
    ['neither', {}, 'nothing-to-do'],
  ])('with %s', (_, state, code) => {
    const { slots, answer } = ask({ kind: 'automatic' }, { state });
    expect(answer?.code).toBe(code);
    expect(slots).toMatchObject({ operator: { lease: null }, failure: { count: 0, cause: null } });
  });
});

describe('an alarm', () => {
  const alarm: AlarmMemory = {
    ...{ changingMs: null, active: true, acknowledged: false, raisedMs: 0, activeSinceMs: 0, head: null },
    ...{
      returnedMs: null,
      repeats: 0,
      shelvedUntilMs: null,
      shelvedUntilUtcMs: null,
      values: {},
      text: 'A.',
    },
  };
  const state = { alarms: { 'store-hot': alarm } };
  const operation = (kind: string) => ({ kind, alarm: 'store-hot' });

  it('is acknowledged, which is no lease', () => {
    const { slots, answer } = ask(operation('acknowledge'), { state });
    expect(answer).toStrictEqual({ id: 'request-1', accepted: true, code: 'accepted', text: 'Accepted.' });
    expect(slots.alarms).toEqual({ 'store-hot': { ...alarm, acknowledged: true } });
  });

  it('is taken off its shelf', () => {
    const shelved = { ...alarm, shelvedUntilMs: 5, shelvedUntilUtcMs: 6 };
    const { slots, answer } = ask(operation('unshelve'), { state: { alarms: { 'store-hot': shelved } } });
    expect(answer?.code).toBe('accepted');
    expect(slots.alarms).toEqual({ 'store-hot': alarm });
    expect(codeOf(operation('unshelve'), { state })).toBe('nothing-to-do');
  });
});
