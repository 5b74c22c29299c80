import { describe, expect, it } from 'vitest';
import { arbitrate } from '../../../controller/engine/arbitrate.ts';
import { lowPass } from '../../../controller/engine/blocks/low-pass.ts';
import { reasonsOf } from '../../../controller/engine/explain/reasons.ts';
import { countFailure, forgiveFailure } from '../../../controller/engine/failure.ts';
import { hazards } from '../../../controller/engine/hazards/table.ts';
import { known } from '../../../controller/engine/known.ts';
import { leaseCommand } from '../../../controller/engine/operator/lease.ts';
import { canEmpty, canRest, panHeatJK, panVolumeL } from '../../../controller/engine/pan.ts';
import { recentStarts, startBlock, stopBlock } from '../../../controller/engine/sequence/least-times.ts';
import { isPumping, withState } from '../../../controller/engine/situation.ts';
import { initialState, type Phase, safeOutputs, startUp } from '../../../controller/engine/state.ts';
import type { Site } from '../../../shared-types/site.ts';
import { makeSite, siteKinds } from './rig.ts';
import { commandOf, nowMs, situationOf } from './situations.ts';

const stranger = { name: 'boiling', sinceMs: 0 } as unknown as Phase;
const circulating: Phase = { name: 'circulating', sinceMs: nowMs - 600_000, afterFill: true };
const emptying: Phase = { name: 'emptying', sinceMs: nowMs, cause: startUp };
const resting: Phase = { name: 'resting', sinceMs: nowMs };

describe('the pan', () => {
  it('holds its area times its depth, and 4.18 kJ for each of its kilograms and kelvins', () => {
    const site = makeSite('drain-valve');
    expect(panVolumeL(site)).toBeCloseTo(400, 9);
    // 400 L at 20 °C: 998.2 kg/m3 and 4184 J/kgK, of common tables.
    expect(panHeatJK(site, 20) / (0.4 * 998.2 * 4184)).toBeCloseTo(1, 3);
  });

  it('cannot be emptied without a drain, and does not rest where it empties with the pump', () => {
    expect(siteKinds.map((kind) => canEmpty(makeSite(kind)))).toEqual([true, true, false, true]);
    expect(siteKinds.map((kind) => canRest(makeSite(kind)))).toEqual([true, false, true, true]);
  });
});

describe('a low-pass', () => {
  it('goes the share of the way that the step is of step and time constant together', () => {
    expect(lowPass(0, 10, 20, 60)).toBe(2.5);
    expect(lowPass(10, 0, 60, 60)).toBe(5);
    expect(lowPass(4, 8, 0, 60)).toBe(4);
  });
});

describe('what is known', () => {
  it('leaves out what is null, and keeps 0', () => {
    expect(known({ panC: null, storeC: 0, ambientC: -5 })).toEqual({ storeC: 0, ambientC: -5 });
  });
});

describe('a situation', () => {
  it('keeps all but its state', () => {
    const before = situationOf({ drainSays: true });
    const state = { ...initialState(), runMs: 7 };
    expect(withState(before, state)).toEqual({ ...before, state });
  });

  it('pumps while it fills and circulates', () => {
    expect(
      [circulating, { name: 'filling', sinceMs: 0 } as Phase].map((phase) => isPumping({ phase })),
    ).toEqual([true, true]);
    expect([emptying, resting].map((phase) => isPumping({ phase }))).toEqual([false, false]);
  });
});

describe('the least times', () => {
  const hourMs = 3_600_000;
  const at = (sinceMs: number, startsMs: readonly number[] = []) =>
    situationOf({ state: { pump: { sinceMs, startsMs, exercising: false } } });

  it('count the starts of the last hour', () => {
    expect(recentStarts([nowMs - hourMs, nowMs - hourMs + 1, nowMs], nowMs)).toEqual([
      nowMs - hourMs + 1,
      nowMs,
    ]);
  });

  it('keep the pump off for its least time', () => {
    expect(startBlock(at(nowMs - 29_999), commandOf('run'))).toEqual({
      code: 'waiting-least-off',
      values: { offS: 29.999, leastOffS: 30 },
    });
    expect(startBlock(at(nowMs - 30_000), commandOf('run'))).toBeNull();
    expect(startBlock(at(nowMs - 1), commandOf('run', { urgent: true }))).toBeNull();
  });

  it('is begun by nothing but a protection in the first look after time that nobody saw', () => {
    const first = { ...at(nowMs - 3_600_000), elapsedMs: 0 };
    expect(startBlock(first, commandOf('run'))).toEqual({ code: 'start-up-proving', values: {} });
    expect(startBlock({ ...first, elapsedMs: 1 }, commandOf('run'))).toBeNull();
    expect(startBlock(first, commandOf('run', { urgent: true }))).toBeNull();
  });

  it('allow so many starts an hour', () => {
    const { settings } = situationOf();
    const starts = Array.from({ length: settings.startsPerHour }, (_, index) => nowMs - 1000 * index);
    expect(startBlock(at(0, starts), commandOf('run'))).toEqual({
      code: 'waiting-starts-per-hour',
      values: { starts: settings.startsPerHour, startsPerHour: settings.startsPerHour },
    });
    expect(startBlock(at(0, starts.slice(1)), commandOf('run'))).toBeNull();
    expect(startBlock(at(0, starts), commandOf('run', { urgent: true }))).toBeNull();
  });

  it('keep the pump on for its least time', () => {
    expect(stopBlock(at(nowMs - 29_000), commandOf('rest'))).toEqual({
      code: 'circulating-least-on',
      values: { leftS: 1 },
    });
    expect(stopBlock(at(nowMs - 30_000), commandOf('rest'))).toBeNull();
    expect(stopBlock(at(nowMs), commandOf('rest', { urgent: true }))).toBeNull();
  });
});

describe('the lease of an operator', () => {
  it.each([
    ['run-pump', 'run', 'operator-run'],
    ['empty', 'empty', 'operator-empty'],
    ['rest', 'rest', 'operator-rest'],
  ] as const)('to %s demands to %s: %s', (kind, goal, code) => {
    const lease = { kind, untilMs: nowMs + 150_000 };
    const situation = situationOf({ state: { operator: { lease, seen: [] } } });
    const command = { goal, cause: { code, values: { leftMin: 2.5 } }, urgent: false, by: 'operator' };
    expect(leaseCommand(situation)).toEqual(command);
    expect(arbitrate(situation, null)).toEqual(command);
  });

  it('gives way to a protection, and leaves the rest to the loop itself', () => {
    const lease = { kind: 'empty', untilMs: nowMs + 150_000 } as const;
    const leased = situationOf({ state: { operator: { lease, seen: [] }, phase: emptying } });
    const hazard = commandOf('run', { by: 'hazard' });
    expect(arbitrate(leased, hazard)).toBe(hazard);
    const free = situationOf({ state: { phase: emptying } });
    expect(leaseCommand(free)).toBeNull();
    expect(arbitrate(free, null).by).toBe('want');
  });
});

describe('failures', () => {
  const failing = hazards.find(({ fails }) => fails === 'dry-running');
  const harmless = hazards.find(({ fails }) => fails === undefined);
  if (failing === undefined || harmless === undefined) throw new Error('no such protections');
  const failure = { ...commandOf('empty'), hazard: failing };
  const frost = { ...commandOf('empty'), hazard: harmless };
  const once = { count: 1, cause: 'dry-running' } as const;
  const none = { count: 0, cause: null };
  const forgiven = (
    phase: Phase,
    next: Phase,
    { level = 'full', kind = 'drain-valve', hazard = null as typeof frost | null } = {},
  ) =>
    forgiveFailure(
      once,
      situationOf({ state: { phase }, level: level as 'full', site: makeSite(kind as 'corner') }),
      { phase: next, cause: startUp },
      hazard,
    );

  it('are counted with the protection that means one', () => {
    expect(countFailure(once, failure)).toEqual({ count: 2, cause: 'dry-running' });
    expect(countFailure(once, frost)).toBe(once);
    expect(countFailure(once, null)).toBe(once);
  });

  it('are forgiven when a full pan that was used empties', () => {
    expect(forgiven(circulating, emptying)).toEqual(none);
    expect(forgiven(resting, emptying)).toEqual(none);
    expect(forgiven(resting, emptying, { hazard: frost })).toEqual(none);
    expect(forgiven(resting, emptying, { hazard: failure })).toBe(once);
    expect(forgiven(resting, resting)).toBe(once);
    expect(forgiven(resting, emptying, { level: 'part' })).toBe(once);
    expect(forgiven({ name: 'filling', sinceMs: 0 }, emptying)).toBe(once);
  });

  it('are forgiven after ten minutes of circulation where the pan cannot be emptied', () => {
    const early: Phase = { ...circulating, sinceMs: nowMs - 599_999 };
    expect(forgiven(circulating, circulating, { kind: 'corner' })).toEqual(none);
    expect(forgiven(early, early, { kind: 'corner' })).toBe(once);
    expect(forgiven({ name: 'resting', sinceMs: 0 }, resting, { kind: 'corner' })).toBe(once);
    expect(forgiven(circulating, circulating)).toBe(once);
  });

  it('by heat alone are forgiven after two hours where the pan cannot be emptied', () => {
    const byHeat = { count: 1, cause: 'no-flow' } as const;
    const then = (forMs: number) => {
      const phase: Phase = { ...circulating, sinceMs: nowMs - forMs };
      const situation = situationOf({ state: { phase }, level: 'full', site: makeSite('corner') });
      return forgiveFailure(byHeat, situation, { phase, cause: startUp }, null);
    };
    expect([then(7_199_999), then(7_200_000)]).toEqual([byHeat, none]);
  });

  it('that never were need no forgiving', () => {
    const situation = situationOf({ state: { phase: circulating }, level: 'full' });
    expect(forgiveFailure(none, situation, { phase: emptying, cause: startUp }, null)).toBe(none);
  });
});

describe('reasons of the outputs', () => {
  const cause = { code: 'operator-run', values: { leftMin: 5 } } as const;
  const told = (phase: Phase, site: Site, drainPumpOn = false) => {
    const reasons = reasonsOf({ phase, cause }, site, { ...safeOutputs, drainPumpOn });
    return [reasons.phase.code, reasons.pump.code, reasons.drain.code];
  };
  const phases: readonly (readonly [Phase, string, string])[] = [
    [{ name: 'empty', sinceMs: 0, afterNoGain: true }, 'pump-off-when-empty', 'drain-open-when-empty'],
    [{ name: 'filling', sinceMs: 0 }, 'pump-fills', 'drain-closed-to-hold'],
    [circulating, 'operator-run', 'drain-closed-to-hold'],
    [resting, 'operator-run', 'drain-closed-to-hold'],
    [emptying, 'pump-off-while-emptying', 'drain-open-to-empty'],
    [{ name: 'stopped', sinceMs: 0 }, 'operator-run', 'drain-open-to-empty'],
  ];

  it.each(phases)('in %o: %s, %s', (phase, pump, drain) => {
    expect(told(phase, makeSite('drain-valve'))).toEqual(['operator-run', pump, drain]);
    expect(told(phase, makeSite('drain-pump'), true)).toEqual(['operator-run', pump, 'drain-pump-runs']);
    expect(told(phase, makeSite('drain-pump'))).toEqual(['operator-run', pump, 'drain-pump-off']);
    expect(told(phase, makeSite('pump-stop'))).toEqual(['operator-run', pump, 'output-not-fitted']);
    expect(told(phase, makeSite('corner'))).toEqual(['operator-run', pump, 'output-not-fitted']);
  });

  it('are not made up for a phase or a drain that does not exist', () => {
    const valve = makeSite('drain-valve');
    expect(() => told(stranger, valve)).toThrow('boiling');
    expect(() => told(stranger, makeSite('corner'))).toThrow('boiling');
    expect(() => told(resting, { ...valve, drain: 'bucket' } as never)).toThrow('bucket');
  });
});
