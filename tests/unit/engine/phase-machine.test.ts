import { describe, expect, it } from 'vitest';
import { advance } from '../../../controller/engine/sequence/advance.ts';
import { isFilled } from '../../../controller/engine/sequence/fill-proof.ts';
import type { Command, Situation } from '../../../controller/engine/situation.ts';
import { initialState, type Phase, safeOutputs, startUp } from '../../../controller/engine/state.ts';
import { allSensors, makeSite, type SiteKind } from './rig.ts';
import { commandOf, nowMs, situationOf } from './situations.ts';

const longAgoMs = nowMs - 3_600_000;
const noGain = { code: 'emptying-no-gain', values: {} } as const;
const empty: Phase = { name: 'empty', sinceMs: longAgoMs, afterNoGain: false };
const filling: Phase = { name: 'filling', sinceMs: nowMs - 100_000 };
const circulating: Phase = { name: 'circulating', sinceMs: longAgoMs, afterFill: true };
const resting: Phase = { name: 'resting', sinceMs: longAgoMs };
const emptying: Phase = { name: 'emptying', sinceMs: nowMs - 90_000, cause: noGain };
const proving: Phase = { name: 'emptying', sinceMs: nowMs - 90_000, cause: startUp };
const stopped: Phase = { name: 'stopped', sinceMs: longAgoMs };

type Level = 'empty' | 'part' | 'full' | 'unknown';

/** A loop in a phase, its pump long as it is now. */
function loopIn(phase: Phase, level: Level, kind: SiteKind = 'drain-valve', water: object = {}): Situation {
  const state = { phase, pump: { sinceMs: longAgoMs, startsMs: [], exercising: false } };
  return situationOf({
    state: { ...state, water: { ...initialState().water, level, ...water } },
    site: makeSite(kind),
  });
}

/** A pump that has only just changed may neither start nor stop. */
function hasty(situation: Situation): Situation {
  return {
    ...situation,
    state: { ...situation.state, pump: { sinceMs: nowMs, startsMs: [], exercising: false } },
  };
}

const told = (situation: Situation, command: Command) => {
  const { phase, cause } = advance(situation, command);
  return [phase.name, cause.code];
};
const run = commandOf('run');
const rest = commandOf('rest');
const out = commandOf('empty');
const lock = commandOf('lock');
const asked = 'operator-run';
const runsOn = (goal: 'rest' | 'run') => commandOf(goal, { cause: { code: 'pump-runs-on', values: {} } });
const forHeat = commandOf('run', { cause: { code: 'filling-for-heat', values: {} } });
const frost = (goal: 'run' | 'empty') =>
  commandOf(goal, { cause: { code: 'frost-measured', values: {} }, urgent: true });

describe('the phase machine', () => {
  it.each([empty, filling, circulating, resting, emptying].map((phase) => [phase.name, phase] as const))(
    'stops from %s when it is locked',
    (_, phase) => {
      const { phase: next, cause } = advance(loopIn(phase, 'part'), lock);
      expect([next, cause]).toEqual([{ name: 'stopped', sinceMs: nowMs }, lock.cause]);
    },
  );

  it('leaves an empty pan empty until it is to run', () => {
    expect(advance(loopIn(empty, 'empty'), rest)).toEqual({ phase: empty, cause: rest.cause });
    expect(advance(loopIn(empty, 'empty'), run).phase).toEqual({ name: 'filling', sinceMs: nowMs });
    expect(told(hasty(loopIn(empty, 'empty')), run)).toEqual(['empty', 'waiting-least-off']);
  });

  it('empties again a pan that is found with water in it', () => {
    for (const level of ['part', 'full', 'unknown'] as const)
      expect(advance(loopIn(empty, level), run).phase).toEqual({
        ...{ name: 'emptying', sinceMs: nowMs, cause: startUp },
      });
  });

  it('shuts the drain on a pump that runs on', () => {
    for (const phase of [empty, emptying, stopped]) {
      expect(told(loopIn(phase, 'part'), runsOn('rest'))).toEqual(['resting', 'pump-runs-on']);
      expect(told(loopIn(phase, 'part'), rest)[0]).not.toBe('resting');
    }
    expect(told(loopIn(empty, 'empty'), runsOn('run'))).toEqual(['filling', 'pump-runs-on']);
  });

  it('fills until the pan is proven full, then circulates', () => {
    expect(told(loopIn({ ...filling, sinceMs: nowMs - 99_999 }, 'part'), run)).toEqual(['filling', asked]);
    expect(advance(loopIn(filling, 'part'), run)).toEqual({
      phase: { name: 'circulating', sinceMs: nowMs, afterFill: true },
      cause: run.cause,
    });
    expect(advance(loopIn(filling, 'part'), forHeat).cause).toEqual({
      code: 'filled',
      values: { filledS: 100 },
    });
    expect(advance(loopIn(circulating, 'full'), run)).toEqual({ phase: circulating, cause: run.cause });
  });

  it('ends a fill or a circulation as soon as the pump may stop', () => {
    expect(told(hasty(loopIn(circulating, 'full')), rest)).toEqual(['circulating', 'circulating-least-on']);
    expect(advance(hasty(loopIn(filling, 'part')), rest).phase).toEqual({
      ...{ name: 'circulating', sinceMs: nowMs, afterFill: true },
    });
    const early = { ...filling, sinceMs: nowMs - 1000 };
    expect(advance(hasty(loopIn(early, 'part')), rest).phase).toBe(early);
    expect(advance(loopIn(circulating, 'full'), rest)).toEqual({
      phase: { name: 'resting', sinceMs: nowMs },
      cause: rest.cause,
    });
  });

  it.each([
    ['drain-valve', rest, 'resting'],
    ['drain-valve', out, 'emptying'],
    ['drain-pump', rest, 'resting'],
    ['drain-pump', out, 'emptying'],
    ['pump-stop', rest, 'emptying'],
    ['pump-stop', out, 'emptying'],
    ['corner', rest, 'resting'],
    ['corner', out, 'resting'],
  ] as const)(
    'of a loop with %s leaves the water where it may stay: %o leads to %s',
    (kind, command, name) => {
      expect(told(loopIn(circulating, 'full', kind), command)).toEqual([name, asked]);
    },
  );

  it('runs, empties or rests on from rest', () => {
    expect(advance(loopIn(resting, 'full'), run).phase).toEqual({
      ...{ name: 'circulating', sinceMs: nowMs, afterFill: false },
    });
    expect(told(loopIn(resting, 'part'), run)).toEqual(['filling', asked]);
    expect(advance(loopIn(resting, 'full'), out)).toEqual({
      phase: { name: 'emptying', sinceMs: nowMs, cause: out.cause },
      cause: out.cause,
    });
    expect(advance(loopIn(resting, 'full', 'corner'), out)).toEqual({ phase: resting, cause: out.cause });
    expect(advance(loopIn(resting, 'full'), rest)).toEqual({ phase: resting, cause: rest.cause });
  });

  it('is empty once that is proven, and remembers why it was emptied', () => {
    const emptied = { code: 'emptied', values: { emptiedS: 90 } };
    expect(advance(loopIn(emptying, 'empty'), run)).toEqual({
      phase: { name: 'empty', sinceMs: nowMs, afterNoGain: true },
      cause: emptied,
    });
    expect(advance(loopIn(proving, 'empty'), run)).toEqual({
      phase: { name: 'empty', sinceMs: nowMs, afterNoGain: false },
      cause: emptied,
    });
  });

  it('goes on emptying for the reason for which it began, or for one that asks the same', () => {
    expect(advance(loopIn(emptying, 'part'), run)).toEqual({ phase: emptying, cause: noGain });
    expect(advance(loopIn(emptying, 'part'), out)).toEqual({ phase: emptying, cause: out.cause });
    expect(told(loopIn(emptying, 'full'), rest)).toEqual(['emptying', 'emptying-no-gain']);
    expect(told(loopIn(emptying, 'full'), commandOf('rest', { urgent: true }))).toEqual(['emptying', asked]);
  });

  it('says when emptying takes longer than it should', () => {
    const late = { emptyingMs: 90_000 };
    expect(advance(loopIn(emptying, 'part', 'drain-valve', late), out)).toEqual({
      phase: emptying,
      cause: { code: 'not-emptying', values: { drainedS: 90, drainTimeS: 60 } },
    });
    expect(told(loopIn(emptying, 'part', 'drain-valve', { emptyingMs: 89_999 }), out)).toEqual([
      'emptying',
      asked,
    ]);
    expect(told(loopIn(emptying, 'full', 'drain-valve', late), rest)).toEqual(['resting', 'not-emptying']);
    expect(told(loopIn(emptying, 'full', 'drain-valve', late), out)).toEqual(['emptying', 'not-emptying']);
    expect(told(loopIn(emptying, 'full', 'pump-stop', late), rest)).toEqual(['emptying', 'not-emptying']);
  });

  it('rests with a pan that was found full when nobody wanted it empty', () => {
    const blind: Phase = { ...emptying, cause: { code: 'sensors-failed', values: {} } };
    for (const phase of [proving, blind]) {
      expect(advance(loopIn(phase, 'full'), rest)).toEqual({
        phase: { name: 'resting', sinceMs: nowMs },
        cause: rest.cause,
      });
      expect(told(loopIn(phase, 'full'), out)).toEqual(['emptying', asked]);
      expect(told(loopIn(phase, 'part'), rest)[0]).toBe('emptying');
      expect(told(loopIn(phase, 'full', 'pump-stop'), rest)[0]).toBe('emptying');
    }
  });

  it('keeps warm a pan that does not empty', () => {
    expect(told(loopIn(emptying, 'full'), frost('run'))).toEqual(['circulating', 'frost-measured']);
    expect(told(loopIn(emptying, 'full'), frost('empty'))).toEqual(['emptying', 'frost-measured']);
    expect(told(loopIn(emptying, 'full'), commandOf('run', { urgent: true }))).toEqual(['emptying', asked]);
  });

  it('leaves a stop once the lock is lifted', () => {
    const locked = { ...loopIn(stopped, 'unknown') };
    const failure = (count: number) => ({
      ...locked,
      state: { ...locked.state, failure: { count, cause: null } },
    });
    expect(advance(failure(2), run)).toEqual({ phase: stopped, cause: run.cause });
    expect(advance(failure(1), run)).toEqual({
      phase: { name: 'emptying', sinceMs: nowMs, cause: startUp },
      cause: startUp,
    });
    expect(told(loopIn(stopped, 'unknown', 'corner'), run)).toEqual(['resting', 'start-up-proving']);
  });

  it('knows no other phase', () => {
    const boiling = { name: 'boiling', sinceMs: 0 } as unknown as Phase;
    expect(() => advance(loopIn(boiling, 'full'), run)).toThrow('boiling');
  });
});

describe('a fill', () => {
  const pumping = { ...safeOutputs, pumpFraction: 1, drainOpen: false };
  const site = makeSite('drain-valve', allSensors);
  const filled = (phase: Phase, level: Level, told: object) =>
    isFilled(situationOf({ state: { phase, outputs: pumping }, level, site, told }));

  it('is proven by the level where there is one, whatever the time', () => {
    const early: Phase = { name: 'filling', sinceMs: nowMs };
    expect(filled(early, 'full', { panLevelMm: 40 })).toBe(true);
    expect(filled(filling, 'part', { panLevelMm: 30 })).toBe(false);
  });

  it('is proven by its time without a level, if water moves at the end where that is measured', () => {
    expect(filled(filling, 'part', {})).toBe(true);
    expect(filled({ ...filling, sinceMs: nowMs - 99_999 }, 'part', {})).toBe(false);
    expect(filled(filling, 'part', { flowLMin: 20 })).toBe(true);
    expect(filled(filling, 'part', { flowLMin: 2 })).toBe(true);
    expect(filled(filling, 'part', { flowLMin: 1.9 })).toBe(false);
  });

  it('is none where nothing fills', () => {
    for (const phase of [empty, circulating, resting, emptying, stopped])
      expect(filled(phase, 'full', { panLevelMm: 40 })).toBe(false);
  });
});
