import { describe, expect, it } from 'vitest';
import { leastFallFraction, pipeFlowLMin, pipeVelocityMs, siphonSureMs } from '../../sim/physics/siphon.ts';

/** Common practice of the trade, as its press prints it: slope, and 2 ft/s that carry the air out of a pipe. */
it('a drain-back pipe falls by 2.083 %, a quarter of an inch a foot', () => {
  expect(Math.abs(100 * leastFallFraction - 2.083)).toBeLessThan(5e-4);
});

describe('flow that makes a siphon', () => {
  it('is 2 feet a second', () => {
    expect(siphonSureMs).toBeCloseTo(2 * 0.3048, 12);
  });
  const rows = [
    [16, 7.354],
    [20, 11.491],
    [32, 29.416],
  ] as const;
  it.each(rows)('in a pipe of %d mm it is %d L/min', (insideMm, flowLMin) => {
    expect(Math.abs(pipeFlowLMin(siphonSureMs, insideMm / 1000) - flowLMin)).toBeLessThan(5e-4);
    expect(Math.abs(pipeVelocityMs(flowLMin, insideMm / 1000) - siphonSureMs)).toBeLessThan(1e-4);
  });
});
