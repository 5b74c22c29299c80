import { isDeepStrictEqual } from 'node:util';
import type { Problem } from '../../shared-types/monitor-api.ts';

/**
 * Problems by their cause: a cause stands once, however often it strikes. None ever keeps another out; whoever puts
 * problems of what comes over a wire bounds the number of their causes.
 */
export interface ProblemBook {
  /** @returns true when this changed what a person would read. */
  put(cause: string, problem: Problem): boolean;
  /** @returns true when the cause stood. */
  settle(cause: string): boolean;
  list(): Problem[];
}

export function createProblemBook(): ProblemBook {
  const book = new Map<string, Problem>();
  return {
    put(cause, problem) {
      if (isDeepStrictEqual(book.get(cause), problem)) return false;
      book.set(cause, problem);
      return true;
    },
    settle: (cause) => book.delete(cause),
    list: () => [...book.values()],
  };
}
