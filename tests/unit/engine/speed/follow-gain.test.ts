import { describe, expect, it } from 'vitest';
import type { RawReading } from '../../../../shared-types/readings.ts';
import { circulatingLoop, emptyLoop, type Loop, makeSite, type SiteKind } from '../rig.ts';

const pump = { ratedFlowLMin: 20, ratedHeadM: 3, ratedPowerW: 50, speedControl: true };
const measured = ['panOutletC', 'panSheetC', 'panInletC', 'storeBottomC', 'flowLMin'] as const;
const siteOf = (kind: SiteKind = 'drain-valve') => makeSite(kind, measured, { pump });
const site = siteOf();
/** Speed follows between 2 K and 6 K. */
const settings = { startDifferenceK: 6, stopDifferenceK: 2, leastSpeedFraction: 0.4, stopDelayS: 1800 };

const speed = (loop: Loop) => loop.last.outputs.pumpFraction;
const at = (loop: Loop, differenceK: number) =>
  loop.set({ panOutletC: 20 + differenceK, panSheetC: 20 + differenceK });

/** Lets the pan cool to a difference so slowly that nothing is lost. */
function ease(loop: Loop, toK: number): Loop {
  let differenceK = (loop.last.belief.differenceK ?? 0) - 0.1;
  for (; differenceK > toK; differenceK -= 0.1) at(loop, differenceK).run(60);
  return at(loop, toK);
}

/** Circulates with the pan 6 K above the store, past the time in which the siphon forms. */
function running(on = site): Loop {
  return at(circulatingLoop(on, settings), 6).run(305);
}

describe('the speed of a pump that can be slowed', () => {
  it('is full while the pan fills, and until the siphon stands', () => {
    const loop = emptyLoop(site, settings).set({ panOutletC: 40, panSheetC: 40 }).until('filling').run(20);
    expect(speed(loop)).toBe(1);
    at(loop, 4).set({ flowLMin: 20 }).until('circulating').run(295);
    expect(speed(loop)).toBe(1);
    expect(speed(loop.run(10))).toBeLessThan(1);
  });

  it('follows the difference between stop and start, slowly', () => {
    const loop = at(running(), 4).run(10);
    // A tenth a minute.
    const before = speed(loop);
    expect(before - speed(loop.run(60))).toBeCloseTo(0.1, 10);
    // It stops within 0.01 of where it should be.
    expect(Math.abs(speed(loop.run(600)) - 0.7)).toBeLessThan(0.01);
    expect(Math.abs(speed(at(loop, 5).run(900)) - 0.85)).toBeLessThan(0.01);
    expect(speed(at(loop, 9).run(900))).toBeGreaterThan(0.99);
  });

  it('is never below the least', () => {
    expect(Math.abs(speed(ease(running(), 2.1).run(900)) - 0.415)).toBeLessThan(0.05);
    const loop = running();
    loop.settings = { ...loop.settings, leastSpeedFraction: 0.8 };
    expect(Math.abs(speed(ease(loop, 2.1).run(900)) - 0.805)).toBeLessThan(0.05);
    expect(speed(loop)).toBeGreaterThanOrEqual(0.8);
  });

  it('does not mind small changes', () => {
    const loop = at(running(), 4).run(900);
    const before = speed(loop);
    // 0.05 of the speed is a third of a kelvin.
    expect(speed(at(loop, 4.3).run(900))).toBe(before);
    expect(speed(at(loop, 4.45).run(900))).toBeGreaterThan(before);
  });

  it('turns round after six minutes at the earliest', () => {
    const loop = at(running(), 4).run(900);
    const settled = speed(loop);
    at(loop, 3).run(60);
    const lower = speed(loop);
    expect(lower).toBeLessThan(settled);
    at(loop, 9).run(10);
    const turning = speed(loop);
    expect(speed(loop.run(340))).toBe(turning);
    expect(speed(loop.run(20))).toBeGreaterThan(turning);
  });

  it('is full where the difference cannot be trusted, and for an operator', () => {
    const broken: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };
    const loop = at(running(), 4).run(600);
    expect(speed(loop)).toBeLessThan(0.8);
    expect(speed(loop.set({ panOutletC: broken }).step())).toBe(1);
    const asked = at(running(), 4).run(600);
    asked.ask({ kind: 'run-pump', minutes: 5 });
    expect(speed(asked)).toBe(1);
  });

  it('keeps the flow that holds a siphon', () => {
    const loop = ease(running(), 5).run(300);
    const before = speed(loop);
    ease(loop.set({ flowLMin: 11.9 }), 3).run(60);
    expect(speed(loop)).toBe(before);
    expect(speed(loop.set({ flowLMin: 9.9 }).run(60))).toBeCloseTo(before + 0.1, 10);
    expect(speed(loop.set({ flowLMin: 12.1 }).run(600))).toBeLessThan(before);
  });

  it('stays where the lift leaves half the flow, when no flow is measured', () => {
    const blind = makeSite('drain-valve', ['panOutletC', 'panSheetC', 'storeBottomC'], { pump });
    const loop = ease(running(blind), 2.1).run(900);
    expect(speed(loop)).toBeLessThan(Math.sqrt(0.4 + 0.25 * 0.6) + 0.05);
    expect(speed(loop)).toBeGreaterThan(Math.sqrt(0.4 + 0.25 * 0.6));
  });

  it('is full after a restart', () => {
    const loop = at(running(), 4).run(600);
    expect(loop.step(null).state.speed).toEqual({ fraction: 1, direction: 0, movedMs: 0 });
  });

  it('takes electricity by its cube, where that is not measured', () => {
    const loop = at(running(), 4).run(900);
    const { electricityJ } = loop.last.meter.total;
    const fraction = speed(loop);
    loop.run(100);
    expect((loop.last.meter.total.electricityJ - electricityJ) / (100 * 50 * fraction ** 3)).toBeCloseTo(
      1,
      6,
    );
  });
});

describe('a pump that can only be switched', () => {
  it('runs at full speed', () => {
    const loop = ease(at(circulatingLoop(makeSite('drain-valve', measured), settings), 6).run(60), 4).run(
      600,
    );
    expect(speed(loop)).toBe(1);
  });
});
