import { describe, expect, it } from 'vitest';
import { assertSafe, outputsOf } from '../../../controller/engine/outputs.ts';
import {
  initialState,
  type Phase,
  safeOutputs,
  unknownWater,
  type WaterMemory,
} from '../../../controller/engine/state.ts';
import { makeSite, type SiteKind } from './rig.ts';

const phases: Readonly<Record<Phase['name'], Phase>> = {
  empty: { name: 'empty', sinceMs: 0, afterNoGain: false },
  filling: { name: 'filling', sinceMs: 0 },
  circulating: { name: 'circulating', sinceMs: 0, afterFill: true },
  resting: { name: 'resting', sinceMs: 0 },
  emptying: initialState().phase,
  stopped: { name: 'stopped', sinceMs: 0 },
};
const full: WaterMemory = { ...unknownWater, level: 'full' };
const of = (name: Phase['name'], kind: SiteKind, water = full) =>
  outputsOf(phases[name], water, makeSite(kind), 60, 1, false);

describe('the outputs', () => {
  it.each([
    ['empty', 0, true],
    ['filling', 1, false],
    ['circulating', 1, false],
    ['resting', 0, false],
    ['emptying', 0, true],
    ['stopped', 0, true],
  ] as const)('while %s: pump at %d, a drain valve open: %s', (name, pumpFraction, drainOpen) => {
    expect(of(name, 'drain-valve')).toEqual({ ...safeOutputs, pumpFraction, drainOpen });
    for (const kind of ['pump-stop', 'corner'] as const)
      expect(of(name, kind)).toEqual({ ...safeOutputs, pumpFraction });
  });

  it('run a drain pump while the pan is emptied, until it is empty or twice the drain time is over', () => {
    for (const name of ['emptying', 'stopped'] as const) {
      expect(of(name, 'drain-pump')).toEqual({ ...safeOutputs, drainPumpOn: true });
      expect(of(name, 'drain-pump', { ...full, level: 'empty' }).drainPumpOn).toBe(false);
      expect(of(name, 'drain-pump', { ...full, drainedMs: 119_999 }).drainPumpOn).toBe(true);
      expect(of(name, 'drain-pump', { ...full, drainedMs: 120_000 }).drainPumpOn).toBe(false);
    }
    for (const name of ['empty', 'filling', 'circulating', 'resting'] as const)
      expect(of(name, 'drain-pump').drainPumpOn).toBe(false);
  });

  it('run the pump of an exchanger as they are told', () => {
    for (const asked of [true, false])
      expect(outputsOf(phases.resting, full, makeSite('drain-valve'), 60, 1, asked).exchangerPumpOn).toBe(
        asked,
      );
  });
});

describe('the last look at the outputs', () => {
  const valve = makeSite('drain-valve');
  const pumping = { ...safeOutputs, pumpFraction: 1, drainOpen: false };

  it.each([
    [{ pumpFraction: 0, drainOpen: true }],
    [{ pumpFraction: 0, drainOpen: true, drainPumpOn: true }],
    [{ pumpFraction: 0.5, drainOpen: false }],
    [{ pumpFraction: 1, drainOpen: false }],
  ])('lets %o pass', (outputs) => {
    expect(() => assertSafe({ ...safeOutputs, ...outputs }, valve)).not.toThrow();
  });

  it.each([
    [{ drainOpen: true }, 'pump into an open drain'],
    [{ drainPumpOn: true }, 'pump against the drain pump'],
    [{ pumpFraction: 1.001 }, 'pump fraction out of range'],
    [{ pumpFraction: -0.001 }, 'pump fraction out of range'],
    [{ pumpFraction: Number.NaN }, 'pump fraction out of range'],
  ])('stops %o', (changes, message) => {
    expect(() => assertSafe({ ...pumping, ...changes }, valve)).toThrow(message);
  });

  it('does not mind a drain that is said to be open where none is fitted', () => {
    for (const kind of ['pump-stop', 'corner', 'drain-pump'] as const)
      expect(() => assertSafe({ ...pumping, drainOpen: true }, makeSite(kind))).not.toThrow();
  });
});
