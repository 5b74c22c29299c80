import { describe, expect, it } from 'vitest';
import { createSequenceGuard, nextSequence } from '../../../../controller/links/serial/codec.ts';

function judged(...sequences: number[]) {
  const guard = createSequenceGuard();
  return sequences.map((sequence) => guard.judge(sequence)).join(' ');
}

describe('sequence guard', () => {
  it.each([
    ['any first number', [40_000], 'new'],
    ['one after another', [5, 6, 7], 'new new new'],
    ['the same twice', [5, 5, 6], 'new duplicate new'],
    ['across the turn-over', [65_534, 65_535, 0, 1], 'new new new new'],
    ['a gap', [5, 9, 10], 'new new new'],
    ['an older one', [9, 8, 10], 'new old new'],
    ['an older one across the turn-over', [1, 65_535, 2], 'new old new'],
    ['the furthest ahead', [0, 32_767], 'new new'],
    ['one further is old', [0, 32_768], 'new old'],
    ['three old ones in order: began anew', [900, 1, 2, 3, 4], 'new old old new new'],
    ['three old ones out of order: still old', [900, 1, 3, 2, 4], 'new old old old old'],
    ['old ones with new ones between: still old', [900, 1, 2, 901, 3], 'new old old new old'],
    ['the same old one again and again', [900, 1, 1, 1, 1], 'new old old old old'],
  ])('%s', (_what, sequences, verdicts) => {
    expect(judged(...sequences)).toBe(verdicts);
  });

  it('takes any number after a restart', () => {
    const guard = createSequenceGuard();
    guard.judge(900);
    guard.restart();
    expect(guard.judge(3)).toBe('new');
    expect(guard.judge(3)).toBe('duplicate');
  });

  it('turns over at 65535', () => {
    expect([0, 65_534, 65_535].map(nextSequence)).toEqual([1, 65_535, 0]);
  });
});
