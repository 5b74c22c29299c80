import type { Reporter, TestModule } from 'vitest/node';

/** Closes a run with one plain line: `N passed, N failed, N skipped`. */
export default class Tally implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>): void {
    const counts = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules)
      for (const test of module.children.allTests()) counts[test.result().state]++;
    console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
  }
}
