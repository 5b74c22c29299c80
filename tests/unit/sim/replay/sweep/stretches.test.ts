import { describe, expect, it } from 'vitest';
import { timeS } from '../../../../../sim/replay/sweep/stretches.ts';

const stretch = (fromS: number, toS: number) => ({ fromMs: fromS * 1000, toMs: toS * 1000 });

describe('the time that stretches hold', () => {
  it.each([
    ['none', [], 0],
    ['apart', [stretch(0, 10), stretch(20, 25)], 15],
    ['one after the other', [stretch(0, 10), stretch(10, 15)], 15],
    ['over each other', [stretch(0, 10), stretch(5, 15)], 15],
    ['one inside the other', [stretch(0, 20), stretch(5, 10), stretch(12, 22)], 22],
  ])('counts each instant once: %s', (_, stretches, seconds) => {
    expect(timeS(stretches)).toBe(seconds);
  });
});
