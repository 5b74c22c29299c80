import { describe, expect, it } from 'vitest';
import { pumpHeadM } from '../../sim/physics/pump.ts';

/**
 * A pump of which one point is known: a parabola from 4/3 of the rated head, no flow beyond twice the
 * rated one. Common practice, no published source.
 */
describe('pump of one known point', () => {
  it('holds the rated head at the rated flow, a third more at none, and none at twice the flow', () => {
    expect(pumpHeadM(1, 1, 3.5)).toBeCloseTo(3.5, 12);
    expect(pumpHeadM(0, 1, 3)).toBeCloseTo(4, 12);
    expect(pumpHeadM(2, 1, 3)).toBeCloseTo(0, 12);
  });
});

/** Affinity laws of any textbook of pumps: flow goes with the speed, head with its square. */
describe('affinity laws', () => {
  it.each([0.3, 0.5, 0.8])('at %d of the speed', (speed) => {
    for (const flow of [0, 0.4, 1, 1.5])
      expect(pumpHeadM(speed * flow, speed, 2.5)).toBeCloseTo(speed ** 2 * pumpHeadM(flow, 1, 2.5), 12);
  });
});
