import { describe, expect, it } from 'vitest';
import type { Situation } from '../../../../controller/engine/situation.ts';
import { followGain, fullSpeed } from '../../../../controller/engine/speed/follow-gain.ts';
import type { Phase, SpeedMemory } from '../../../../controller/engine/state.ts';
import { makeSite, quickSettings } from '../rig.ts';
import { commandOf, nowMs, situationOf } from '../situations.ts';

const pump = { ratedFlowLMin: 20, ratedHeadM: 3, ratedPowerW: 50, speedControl: true };
const site = makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'flowLMin'], { pump });
/** The speed is the share of the kelvin between stop and start, without a floor. */
const settings = {
  ...quickSettings,
  stopDifferenceK: 0,
  startDifferenceK: 1,
  leastSpeedFraction: 0,
};
const learnt = { outletOffsetK: 0, outletOffsetSdK: 0 };
const circulating: Phase = { name: 'circulating', sinceMs: 0, afterFill: false };

function follow(
  before: SpeedMemory,
  differenceK: number,
  { flowLMin = 20, phase = circulating, by = 'want' as const, ...rest }: Given = {},
) {
  const told = { panOutletC: differenceK, storeBottomC: 0, flowLMin };
  const situation = situationOf({ site, settings, state: { phase, learnt }, level: 'full', told, ...rest });
  return followGain(before, situation, commandOf('run', { by }));
}
interface Given extends Partial<Pick<Situation, 'elapsedMs'>> {
  readonly flowLMin?: number;
  readonly phase?: Phase;
  readonly by?: 'want';
}
const at = (fraction: number, direction: -1 | 0 | 1 = 0, agoMs = nowMs): SpeedMemory => ({
  fraction,
  direction,
  movedMs: nowMs - agoMs,
});
const step = 5000 / 600_000;

describe('the speed that follows the gain', () => {
  it('is full without a gain', () => {
    expect(follow(at(0.5), 0)).toBe(fullSpeed);
    expect(follow(at(0.5), -0.5)).toBe(fullSpeed);
    expect(follow(at(0.5), 0.001)).not.toBe(fullSpeed);
    const blind = situationOf({ site, settings, state: { phase: circulating } });
    expect(followGain(at(0.5), blind, commandOf('run'))).toBe(fullSpeed);
  });

  it('is full but in circulation, from its fifth minute on', () => {
    expect(follow(at(0.5), 0.9, { phase: { name: 'filling', sinceMs: 0 } })).toBe(fullSpeed);
    expect(follow(at(0.5), 0.9, { phase: { ...circulating, sinceMs: nowMs - 299_999 } })).toBe(fullSpeed);
    expect(follow(at(0.5), 0.9, { phase: { ...circulating, sinceMs: nowMs - 300_000 } })).not.toBe(fullSpeed);
  });

  it('goes a step towards where it should be, up or down', () => {
    expect(follow(at(0.5), 0.9)).toEqual({ fraction: 0.5 + step, direction: 1, movedMs: nowMs });
    expect(follow(at(0.5), 0.1)).toEqual({ fraction: 0.5 - step, direction: -1, movedMs: nowMs });
  });

  it('sets out from a distance of 0.05 on', () => {
    expect(follow(at(0), 0.05).direction).toBe(1);
    expect(follow(at(0), 0.0499).direction).toBe(0);
  });

  it('goes on under way to a distance of 0.01, but not once it stood', () => {
    const moving = at(0, 1, 5000);
    expect(follow(moving, 0.01)).toMatchObject({ movedMs: nowMs });
    expect(follow(moving, 0.0099)).toBe(moving);
    const stood = at(0, 1, 5001);
    expect(follow(stood, 0.0499)).toBe(stood);
    expect(follow(stood, 0.05)).toMatchObject({ movedMs: nowMs });
  });

  it('turns round after six minutes, and waits for none where it never moved', () => {
    const down = at(0.5, -1, 359_999);
    expect(follow(down, 0.9)).toBe(down);
    expect(follow(at(0.5, -1, 360_000), 0.9).direction).toBe(1);
    expect(follow(at(0.5, 0, 0), 0.9).direction).toBe(1);
    const near = at(0.5, -1, 360_000);
    expect(follow(near, 0.54)).toBe(near);
  });
});

describe('a flow that is measured', () => {
  it('below half the full flow is raised at once, up to full speed', () => {
    expect(follow(at(0.8), 0.1, { flowLMin: 9.99 }).direction).toBe(1);
    const before = at(0.8);
    expect(follow(before, 0.1, { flowLMin: 10 })).toBe(before);
    const full = at(1, -1, 0);
    expect(follow(full, 0.1, { flowLMin: 5 })).toBe(full);
  });

  it('below 0.6 of it is lowered no further, and raised all the same', () => {
    const before = at(0.8);
    expect(follow(before, 0.1, { flowLMin: 11.99 })).toBe(before);
    expect(follow(before, 0.1, { flowLMin: 12 }).direction).toBe(-1);
    expect(follow(before, 0.95, { flowLMin: 11.99 }).direction).toBe(1);
  });
});
