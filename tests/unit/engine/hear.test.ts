import { describe, expect, it } from 'vitest';
import { hear } from '../../../controller/engine/operator/hear.ts';
import type { EngineState } from '../../../controller/engine/state.ts';
import { makeSite } from './rig.ts';
import { commandOf, nowMs, situationOf } from './situations.ts';

const utcMs = 5_000_000_000;
const nobody: EngineState['operator'] = { lease: null, seen: [] };
const leased: EngineState['operator'] = { lease: { kind: 'rest', untilMs: nowMs + 1 }, seen: [] };

/** Asks once, with a full pan at rest. */
function ask(
  operation: object,
  { operator = nobody, kind = 'drain-valve', hazard = null as never, ...changes } = {},
) {
  const request = { id: 'request-1', ageMs: 5, lifeMs: 5000, operation, ...changes };
  const situation = situationOf({ state: { operator }, level: 'full', site: makeSite(kind as 'corner') });
  return hear(request, situation, utcMs, hazard);
}

const stranger = (given: unknown) => hear(given, situationOf(), utcMs, null).answer;

describe('what an operator asks', () => {
  it('is answered with the name that it has, of 64 letters at most', () => {
    expect(stranger({ id: 'a'.repeat(70) })).toMatchObject({ id: 'a'.repeat(64), code: 'malformed' });
    expect(stranger({ id: 7 })).toMatchObject({ id: '', code: 'malformed' });
    expect(stranger({})).toMatchObject({ id: '', accepted: false });
    expect(stranger(null)).toBeNull();
  });

  it('is remembered among the newest 64', () => {
    const seen = Array.from({ length: 64 }, (_, index) => `earlier-${index}`);
    const { slots } = ask({ kind: 'rest', minutes: 5 }, { operator: { ...nobody, seen } });
    expect(slots.operator.seen).toEqual([...seen.slice(1), 'request-1']);
  });

  it.each([
    [{ ageMs: 5000 }, 'accepted'],
    [{ ageMs: 5001 }, 'expired'],
    [{ ageMs: -5000 }, 'accepted'],
    [{ ageMs: -5001 }, 'from-the-future'],
    [{ operator: { ...nobody, seen: ['request-1'] } }, 'repeated'],
    [{ operator: { ...nobody, seen: ['request-2'] } }, 'accepted'],
  ])('with %j: %s', (changes, code) => {
    const { answer } = ask({ kind: 'rest', minutes: 5 }, changes as object);
    expect(answer).toMatchObject({ id: 'request-1', code, accepted: code === 'accepted' });
  });

  it.each(['run-pump', 'rest'] as const)('to %s is accepted while a protection demands the same', (kind) => {
    const hazard = commandOf(kind === 'rest' ? 'rest' : 'run') as never;
    expect(ask({ kind, minutes: 5 }, { hazard }).answer).toMatchObject({ code: 'accepted' });
  });

  it('is not remembered when it is refused unheard', () => {
    expect(ask({ kind: 'automatic' }, { ageMs: 6000 } as object).slots.operator.seen).toEqual([]);
  });

  it.each([
    [{ kind: 'run-pump', minutes: 7 }, 'run-pump', 420_000],
    [{ kind: 'rest', minutes: 7 }, 'rest', 420_000],
    [{ kind: 'empty' }, 'empty', 3_660_000],
  ])('%j is a lease: %s for %d ms', (operation, kind, leaseMs) => {
    const { slots, answer } = ask(operation);
    expect(answer).toMatchObject({ accepted: true, code: 'accepted', leaseMs, text: 'Accepted.' });
    expect(slots.operator.lease).toMatchObject({ kind, untilMs: nowMs + leaseMs });
  });

  it('says nothing of a lease where it gives none', () => {
    const { answer } = ask({ kind: 'automatic' }, { operator: leased });
    expect(answer).toEqual({ id: 'request-1', accepted: true, code: 'accepted', text: 'Accepted.' });
    expect(ask({ kind: 'automatic' }).answer).toEqual({
      ...{ id: 'request-1', accepted: false, code: 'nothing-to-do' },
      text: 'Nothing to do: it is so already.',
    });
  });

  it('ends at its instant', () => {
    const until = (untilMs: number) =>
      hear(
        null,
        situationOf({ state: { operator: { lease: { kind: 'rest', untilMs }, seen: ['one'] } } }),
        utcMs,
        null,
      ).slots.operator;
    expect(until(nowMs)).toEqual({ lease: null, seen: ['one'] });
    expect(until(nowMs + 1).lease).not.toBeNull();
  });

  it.each([
    ['run-pump', 'empty'],
    ['rest', 'run'],
    ['rest', 'empty'],
  ] as const)('to %s is refused while a protection demands to %s', (kind, goal) => {
    const { answer, slots } = ask({ kind, minutes: 5 }, { hazard: commandOf(goal) as never });
    expect(answer).toMatchObject({ accepted: false, code: 'hazard-forbids' });
    expect(slots.operator.lease).toBeNull();
  });

  it.each([
    ['pump-stop', { kind: 'rest', minutes: 5 }],
    ['corner', { kind: 'empty' }],
  ])('in a loop with %s cannot be %j', (kind, operation) => {
    expect(ask(operation, { kind }).answer).toMatchObject({ code: 'not-possible-here' });
  });

  it('puts an alarm aside for its minutes', () => {
    const alarm = {
      ...{
        changingMs: null,
        active: true,
        acknowledged: false,
        raisedMs: 0,
        activeSinceMs: 0,
        returnedMs: null,
      },
      ...{ repeats: 0, head: null, shelvedUntilMs: null, shelvedUntilUtcMs: null, values: {}, text: 'One.' },
    };
    const situation = situationOf({ state: { alarms: { 'store-hot': alarm } } });
    const operation = { kind: 'shelve', alarm: 'store-hot', minutes: 6 };
    const { slots, answer } = hear(
      { id: 'request-1', ageMs: 5, lifeMs: 5000, operation },
      situation,
      utcMs,
      null,
    );
    expect(answer).toMatchObject({ accepted: true, leaseMs: 360_000 });
    expect(slots.alarms['store-hot']).toMatchObject({
      shelvedUntilMs: nowMs + 360_000,
      shelvedUntilUtcMs: utcMs + 360_000,
    });
    expect(ask(operation).answer).toMatchObject({ code: 'no-such-alarm' });
  });
});
