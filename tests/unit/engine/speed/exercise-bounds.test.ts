import { describe, expect, it } from 'vitest';
import type { Situation } from '../../../../controller/engine/situation.ts';
import { exerciseCommand } from '../../../../controller/engine/speed/exercise.ts';
import { type EngineState, initialState } from '../../../../controller/engine/state.ts';
import { nowMs, situationOf } from '../situations.ts';

const hourMs = 3_600_000;
const even = { panOutletC: 20, panSheetC: 20, storeBottomC: 20 };

/** A full pan at rest, had its pump stood for so long. */
function resting(idleMs: number, told: object = even, state: Partial<EngineState> = {}): Situation {
  const pump = { sinceMs: nowMs - idleMs, startsMs: [], exercising: false };
  const phase = { name: 'resting', sinceMs: 0 } as const;
  return situationOf({ state: { phase, pump, ...state }, level: 'full', told });
}

/** A pump that is being turned, for so long. */
function turning(idleMs: number, differenceK: number | null, phase: object = {}): Situation {
  const pump = { sinceMs: nowMs - idleMs, startsMs: [], exercising: true };
  const whole = { name: 'circulating', sinceMs: 0, afterFill: false, ...phase } as EngineState['phase'];
  const learnt = { outletOffsetK: 0, outletOffsetSdK: 0.2 };
  const told = { panOutletC: 20 + (differenceK ?? 0), ...(differenceK === null ? {} : { storeBottomC: 20 }) };
  return situationOf({ state: { phase: whole, pump, learnt }, level: 'full', told });
}

describe('a standing pump', () => {
  it('is turned after a week to the millisecond, as the loop itself wants it', () => {
    expect(exerciseCommand(resting(168 * hourMs))).toEqual({
      goal: 'run',
      cause: { code: 'exercising-pump', values: { idleH: 168 } },
      urgent: false,
      by: 'want',
    });
    expect(exerciseCommand(resting(168 * hourMs - 1))).toBeNull();
  });

  it('waits for a pan like the store for another week to the millisecond', () => {
    const apart = { ...even, panOutletC: 26 };
    expect(exerciseCommand(resting(336 * hourMs - 1, apart))).toBeNull();
    expect(exerciseCommand(resting(336 * hourMs, apart))).toMatchObject({ goal: 'run' });
  });

  it('is left alone while a frost is latched, and while pan or store cannot be read', () => {
    const frost = { ...initialState().frost, latched: 'frost-measured' } as const;
    expect(exerciseCommand(resting(400 * hourMs, even, { frost }))).toBeNull();
    expect(exerciseCommand(resting(400 * hourMs, { panOutletC: 20 }))).toBeNull();
    expect(exerciseCommand(resting(400 * hourMs, { storeBottomC: 20 }))).toBeNull();
    const blind = resting(400 * hourMs);
    expect(exerciseCommand({ ...blind, facts: { ...blind.facts, coldestPanC: null } })).toBeNull();
  });
});

describe('a pump that is being turned', () => {
  it('turns for ten seconds, and rests then', () => {
    expect(exerciseCommand(turning(9999, 0))).toMatchObject({ goal: 'run', by: 'want' });
    expect(exerciseCommand(turning(10_000, 0))).toMatchObject({ goal: 'rest' });
    expect(exerciseCommand(turning(10_000, null))).toMatchObject({ goal: 'rest' });
  });

  it('is left to the harvest from the start difference on', () => {
    expect(exerciseCommand(turning(10_000, 5.999))).toMatchObject({ goal: 'rest' });
    expect(exerciseCommand(turning(10_000, 6))).toBeNull();
  });

  it('is of no concern in another phase, nor where it was started for something else', () => {
    expect(exerciseCommand(turning(5000, 0, { name: 'filling' }))).toBeNull();
    const situation = turning(5000, 0);
    const { state } = situation;
    expect(
      exerciseCommand({ ...situation, state: { ...state, pump: { ...state.pump, exercising: false } } }),
    ).toBeNull();
  });
});
