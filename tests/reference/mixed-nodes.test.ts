import { describe, expect, it } from 'vitest';
import { createExchange, letIn, letOut, moveAlong } from '../../sim/plant/row.ts';
import { at, createRow } from '../../sim/plant/water.ts';

/**
 * Step response of N mixed nodes in a row, F = 1 - exp(-N th) sum_{i<N} (N th)^i / i! (Levenspiel,
 * Chemical Reaction Engineering); values computed by another program.
 *
 * Water is pushed in pieces of a 4000th of the pipe: the implicit mixing is then late by half a piece a
 * node, which moves F by less than 0.001.
 */
describe('pipe as a row of mixed nodes', () => {
  const rows = [
    [3, 0.5, 0.191153],
    [3, 1, 0.57681],
    [3, 2, 0.938031],
    [10, 0.5, 0.031828],
    [10, 1, 0.54207],
    [10, 2, 0.995005],
  ] as const;
  it.each(rows)('%d nodes after %d pipe volumes', (count, volumes, expected) => {
    const pipe = createRow(count, count, 0);
    const along = createExchange(count);
    const pieces = 4000;
    for (let i = 0; i < pieces * volumes; i++) {
      letIn(along, 0, count / pieces, 1);
      letOut(along, count - 1, count / pieces);
      moveAlong(pipe, along);
    }
    expect(Math.abs(at(pipe.waterC, count - 1) - expected)).toBeLessThan(0.001);
  });
});
