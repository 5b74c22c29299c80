import { expect, it } from 'vitest';
import type { Program } from './process.ts';

/**
 * That a command ends with 2 and says why, for each of some arguments.
 *
 * @param cases - Arguments, and words that are to be said.
 */
export function itRefuses(
  start: (...args: string[]) => Program,
  cases: readonly (readonly [args: readonly string[], words: string])[],
): void {
  it.each(cases)(
    'refuses %j with code 2 and words',
    async (args, words) => {
      const program = start(...args);
      expect((await program.ended).code).toBe(2);
      expect(program.output()).toContain(words);
    },
    60_000,
  );
}
