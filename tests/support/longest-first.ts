import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take the longest, in that order. */
const longest = [
  'sim/balance.test.ts',
  'course/best.test.ts',
  'exploration/explore.test.ts',
  'engine/never.test.ts',
  'closed-loop/closed-loop.test.ts',
  'weather/epw.test.ts',
  'identify/twin.test.ts',
  'failures/failures.test.ts',
] as const;

/** Begins with the longest files, so that in the end no core waits for one of them; on a fresh clone nothing else tells which they are. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rankOf = ({ moduleId }: TestSpecification) => {
      const rank = longest.findIndex((end) => moduleId.endsWith(end));
      return rank < 0 ? longest.length : rank;
    };
    return (await super.sort(files)).toSorted((a, b) => rankOf(a) - rankOf(b));
  }
}
