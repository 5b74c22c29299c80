import { defineConfig } from 'vitest/config';
import { LongestFirst } from './support/longest-first.ts';

const root = new URL('..', import.meta.url).pathname;

/** Rooms whose tests talk to real processes, once the pure ones are through; ports and folders are their own. */
const withProcesses = (groupOrder: number) => ({
  testTimeout: 90_000,
  hookTimeout: 90_000,
  maxWorkers: 2,
  sequence: { groupOrder },
});

/**
 * Simulated years are run as Node runs them: the test runner's own module loader makes each call between files
 * several times dearer. It is needed only where coverage is counted.
 */
const asNodeRunsThem = process.argv.includes('--coverage')
  ? []
  : [/\/(sim|controller\/engine|shared-types)\/.*\.ts$/];

/** Tests without processes that take many seconds: each file goes to whichever core is free next. */
const longOnes = [
  'tests/property/**/*.test.ts',
  'tests/unit/identify/**/*.test.ts',
  'tests/unit/sim/{course,failures,identify,replay,scenario,weather}/**/*.test.ts',
];

export default defineConfig({
  test: {
    root,
    sequence: { sequencer: LongestFirst },
    reporters: ['default', './tests/support/tally.ts'],
    // Importing electron's package outside Electron would try to download it.
    env: { ELECTRON_OVERRIDE_DIST_PATH: '/nonexistent' },
    server: { deps: { external: asNodeRunsThem } },
    projects: [
      {
        extends: true,
        test: {
          name: 'long',
          include: longOnes,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // As many as there are cores: the runner itself has next to nothing to do.
          maxWorkers: '100%',
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'short',
          include: ['tests/{unit,reference,property}/**/*.test.{ts,tsx}'],
          exclude: longOnes,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          maxWorkers: '100%',
          // Files of one worker share their modules, which are loaded once and not for each file: a test leaves nothing
          // behind in them. Files are dealt out beforehand, so that long ones would leave a core without work.
          isolate: false,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: { name: 'integration', include: ['tests/integration/**/*.test.ts'], ...withProcesses(2) },
      },
      {
        extends: true,
        test: {
          name: 'end-to-end',
          include: ['tests/end-to-end/**/*.test.ts'],
          globalSetup: 'tests/support/built-page.ts',
          ...withProcesses(3),
        },
      },
    ],
    coverage: {
      provider: 'v8',
      include: ['shared-types/**', 'controller/**', 'sim/**', 'desktop/{host,web,electron}/**'],
      reporter: ['text-summary', 'json-summary'],
    },
  },
});
