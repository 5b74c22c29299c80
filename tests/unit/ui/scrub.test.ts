import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestIndex, phaseAt, phaseEdge } from '../../../desktop/ui/replay/scrub.ts';
import type { PhaseSpan } from '../../../shared-types/log.ts';

describe('the nearest instant', () => {
  test('is as near as any other', () => {
    const rising = fc
      .uniqueArray(fc.integer({ min: 0, max: 10_000 }), { minLength: 1, maxLength: 60 })
      .map((list) => list.sort((a, b) => a - b));
    fc.assert(
      fc.property(rising, fc.integer({ min: -500, max: 10_500 }), (atMs, tMs) => {
        const found = Math.abs((atMs[nearestIndex(atMs, tMs)] as number) - tMs);
        expect(found).toBe(Math.min(...atMs.map((at) => Math.abs(at - tMs))));
      }),
    );
  });
  test('of nothing is none', () => {
    expect(nearestIndex([], 5)).toBe(-1);
  });
});

const span = (phase: PhaseSpan['phase'], fromMs: number, toMs: number): PhaseSpan => ({
  phase,
  reason: 'emptied',
  fromMs,
  toMs,
});
const phases = [span('empty', 0, 100), span('filling', 100, 150), span('circulating', 200, 300)];

describe('the phase at an instant', () => {
  test('begins with its start and ends before its end', () => {
    expect(phaseAt(phases, 99)?.phase).toBe('empty');
    expect(phaseAt(phases, 100)?.phase).toBe('filling');
  });
  test('is none in a pause of the log', () => {
    expect(phaseAt(phases, 150)).toBeUndefined();
    expect(phaseAt(phases, 199)).toBeUndefined();
  });
  test('holds at the very end of the day', () => {
    expect(phaseAt(phases, 300)?.phase).toBe('circulating');
    expect(phaseAt(phases, 301)).toBeUndefined();
  });
});

test('steps from phase to phase go to their starts', () => {
  expect(phaseEdge(phases, 50, 'next')).toBe(100);
  expect(phaseEdge(phases, 100, 'next')).toBe(200);
  expect(phaseEdge(phases, 200, 'next')).toBeUndefined();
  expect(phaseEdge(phases, 100, 'previous')).toBe(0);
  expect(phaseEdge(phases, 101, 'previous')).toBe(100);
  expect(phaseEdge(phases, 0, 'previous')).toBeUndefined();
});
