import { describe, expect, it } from 'vitest';
import { fallSafe } from '../../../controller/engine/fall-safe.ts';
import { readInput, type SoundInput } from '../../../controller/engine/input.ts';
import { type EngineState, initialState, type Phase, safeOutputs } from '../../../controller/engine/state.ts';

const start = initialState();
const input = (changes: Partial<SoundInput> = {}): SoundInput => ({
  ...readInput({}),
  nowMs: 9_000_000,
  elapsedMs: 5000,
  ...changes,
});
const fall = (state: Partial<EngineState> = {}, changes: Partial<SoundInput> = {}) =>
  fallSafe({ ...start, runMs: 60_000, stepped: true, ...state }, input(changes));

describe('an engine that failed', () => {
  it('goes on in time, with safe outputs, and starts anew at the next step', () => {
    const outputs = { ...safeOutputs, pumpFraction: 1, drainOpen: false };
    const { state, decision } = fall({ outputs });
    expect(state).toMatchObject({ runMs: 65_000, stepped: false, outputs: safeOutputs });
    expect(decision.outputs).toEqual(safeOutputs);
    const why = { code: 'internal-error' };
    expect(decision.reasons).toMatchObject({ phase: why, pump: why, drain: why });
    expect(fall({}, { elapsedMs: null }).state.runMs).toBe(60_000);
    expect(fallSafe('nonsense', input()).state).toMatchObject({ runMs: 5000, stepped: false });
  });

  it('raises its alarm', () => {
    expect(fall().state.alarms['internal-error']).toMatchObject({
      changingMs: null,
      active: true,
      acknowledged: false,
      raisedMs: 9_000_000,
      activeSinceMs: 65_000,
      returnedMs: null,
      repeats: 0,
      head: null,
      shelvedUntilMs: null,
      shelvedUntilUtcMs: null,
      values: {},
    });
  });

  it('leaves an alarm that stands as it is, but for what was about to change', () => {
    const known = fall().state.alarms['internal-error'];
    if (known === undefined) throw new Error('no alarm');
    const standing = { ...known, changingMs: 3, acknowledged: true, raisedMs: 4, repeats: 2 };
    const { alarms } = fall({ alarms: { 'internal-error': standing } }).state;
    expect(alarms).toEqual({ 'internal-error': { ...standing, changingMs: null } });
    const over = { ...standing, active: false, returnedMs: 7, shelvedUntilMs: 8, shelvedUntilUtcMs: 9 };
    expect(fall({ alarms: { 'internal-error': over } }).state.alarms['internal-error']).toEqual({
      ...known,
      ...{ returnedMs: 7, repeats: 2, shelvedUntilMs: 8, shelvedUntilUtcMs: 9 },
    });
  });

  it.each<[Phase, string, number]>([
    [{ name: 'stopped', sinceMs: 5000 }, 'stopped', 60_000],
    [{ name: 'resting', sinceMs: 65_000 }, 'emptying', 0],
    [{ name: 'resting', sinceMs: 99_000 }, 'emptying', 0],
  ])('in %o tells %s, for %d ms', (phase, name, forMs) => {
    expect(fall({ phase }).decision).toMatchObject({ phase: name, phaseForMs: forMs });
  });

  it('tells totals and nothing that it would have had to judge', () => {
    const total = { ...start.meter.total, heatHomeJ: 8, starts: 3 };
    const dayStart = { ...start.meter.total, heatHomeJ: 5, starts: 1 };
    const { decision } = fall({ meter: { ...start.meter, total, dayStart, estimatedJ: 2, rateW: 300 } });
    expect(decision.meter).toEqual({
      ...{ total, heatRateW: null, flowLMin: null, estimated: true, errorFraction: null, estimatedJ: 2 },
      today: { ...start.meter.total, heatHomeJ: 3, starts: 2 },
    });
    expect(decision.belief).toMatchObject({ readings: {}, water: 'unknown', flowProven: false });
    expect(decision.lease).toBeNull();
  });

  it('answers a request by its name, and nobody who did not ask', () => {
    expect(fall().decision.answer).toBeNull();
    const refused = {
      accepted: false,
      code: 'not-possible-here',
      text: 'Refused: this loop cannot do that.',
    };
    expect(fall({}, { request: { id: 'request-1' } }).decision.answer).toEqual({
      id: 'request-1',
      ...refused,
    });
    expect(fall({}, { request: { id: 7 } }).decision.answer).toEqual({ id: '', ...refused });
  });
});
