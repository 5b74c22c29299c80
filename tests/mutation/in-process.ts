import { globSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { INSTRUMENTER_CONSTANTS, type InstrumenterContext } from '@stryker-mutator/api/core';
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import {
  DryRunStatus,
  determineHitLimitReached,
  type MutantRunOptions,
  type TestResult,
  type TestRunner,
  TestStatus,
  toMutantRunResult,
} from '@stryker-mutator/api/test-runner';
import { type CollectedTest, takeTests } from './collect.ts';
import { freshModules, loadFreshly } from './fresh-modules.ts';

/** The tests that mutants have to get past: the quick ones, which say exactly what the engine does. */
export const quickTests = ['tests/reference/water.test.ts', 'tests/unit/engine/**/*.test.ts'] as const;
/** Environment variable with the test files for this run: a JSON list. */
export const testsVariable = 'MUTATION_TESTS';
const testFiles = JSON.parse(process.env[testsVariable] ?? JSON.stringify(quickTests)) as string[];

/** When a file or a test last noticed a mutant: it is likely to notice the next one too, so it runs first. */
const noticed = new Map<string, number>();
let notices = 0;

/**
 * Runs the tests in this very process, from modules loaded anew for each mutant. A runner of test files that starts
 * a worker for each mutant takes several times as long.
 */
const inProcess: TestRunner = {
  capabilities: () => ({ reloadEnvironment: true }),

  async init() {
    loadFreshly(pathToFileURL(`${process.cwd()}/`), new URL('./collect.ts', import.meta.url).href);
  },

  async dryRun() {
    const context = instruments();
    delete context.activeMutant;
    freshModules();
    const tests: TestResult[] = [];
    for (const file of globSync(testFiles)) for (const test of await load(file)) tests.push(await run(test));
    const { mutantCoverage } = context;
    return {
      status: DryRunStatus.Complete,
      tests,
      ...(mutantCoverage === undefined ? {} : { mutantCoverage }),
    };
  },

  async mutantRun(options: MutantRunOptions) {
    const context = instruments();
    context.hitCount = 0;
    if (options.hitLimit === undefined) delete context.hitLimit;
    else context.hitLimit = options.hitLimit;
    freshModules();
    const tests: TestResult[] = [];
    for await (const result of runMutated(options)) {
      tests.push(result);
      if (result.status === TestStatus.Failed) break;
    }
    const endless = determineHitLimitReached(context.hitCount, options.hitLimit);
    return toMutantRunResult(endless ?? { status: DryRunStatus.Complete, tests });
  },
};

async function* runMutated({ activeMutant, testFilter, mutantActivation }: MutantRunOptions) {
  const context = instruments();
  for (const file of keenestFirst(filesOf(testFilter), (name) => name)) {
    if (mutantActivation === 'static') context.activeMutant = activeMutant.id;
    else delete context.activeMutant;
    const loaded = await loadMutated(file, testFilter);
    context.activeMutant = activeMutant.id;
    const wanted = loaded.filter(({ name }) => testFilter?.includes(name) ?? true);
    for (const test of keenestFirst(wanted, ({ name }) => name)) {
      const result = await run(test);
      if (result.status === TestStatus.Failed)
        for (const name of [file, test.name]) noticed.set(name, ++notices);
      yield result;
    }
  }
}

/** What the mutated files report to, and learn from which mutant is on. */
function instruments(): InstrumenterContext {
  const world = globalThis as Record<string, unknown>;
  const known = world[INSTRUMENTER_CONSTANTS.NAMESPACE] as InstrumenterContext | undefined;
  if (known !== undefined) return known;
  const made: InstrumenterContext = {};
  world[INSTRUMENTER_CONSTANTS.NAMESPACE] = made;
  return made;
}

function filesOf(testFilter: readonly string[] | undefined): string[] {
  const files = globSync(testFiles);
  return testFilter === undefined
    ? files
    : files.filter((file) => testFilter.some((name) => name.startsWith(`${file}: `)));
}

function keenestFirst<T>(some: readonly T[], nameOf: (one: T) => string): T[] {
  const keen = (one: T) => noticed.get(nameOf(one)) ?? -1;
  return some.toSorted((a, b) => keen(b) - keen(a));
}

async function load(file: string): Promise<readonly CollectedTest[]> {
  await import(pathToFileURL(file).href);
  return takeTests().map(({ name, body }) => ({ name: `${file}: ${name}`, body }));
}

/** A mutant that keeps a test file from loading is noticed by that, in place of each of its tests. */
async function loadMutated(
  file: string,
  names: readonly string[] = [file],
): Promise<readonly CollectedTest[]> {
  try {
    return await load(file);
  } catch (error) {
    takeTests();
    const body = () => {
      throw error;
    };
    return names.map((name) => ({ name, body }));
  }
}

async function run({ name, body }: CollectedTest): Promise<TestResult> {
  const context = instruments();
  context.currentTestId = name;
  const startMs = performance.now();
  const told = () => ({ id: name, name, timeSpentMs: performance.now() - startMs });
  try {
    await body();
    return { ...told(), status: TestStatus.Success };
  } catch (error) {
    return { ...told(), status: TestStatus.Failed, failureMessage: String(error) };
  } finally {
    delete context.currentTestId;
  }
}

const makeRunner = Object.assign(() => inProcess, { inject: [] as const });

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'in-process', makeRunner)];
