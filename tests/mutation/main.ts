import { existsSync, globSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Stryker } from '@stryker-mutator/core';
import { Command } from 'commander';
import { equivalents } from './equivalent.ts';
import { quickTests, testsVariable } from './in-process.ts';
import { scored } from './score.ts';

const engine = 'controller/engine';
const exitLow = 1;
const exitWrong = 2;

const command = new Command('npm run mutation --')
  .description('Changes the engine in one place at a time and counts the changes that no test notices.')
  .argument(
    '[parts...]',
    `folders or files below ${engine}, such as hazards or water.ts; all of it otherwise`,
  )
  .option('--workers <number>', 'test runners at once', Number, 2)
  .option('--least <percent>', 'exit code 1 below this score', Number, 95)
  .option('--tests <glob...>', 'the test files that have to notice', [...quickTests])
  .option('--static', 'with what runs as a file is loaded, such as tables: each takes all the tests')
  .addHelpText(
    'after',
    '\nExit codes: 0 well, 1 score below --least, 2 wrong use.\nExample: npm run mutation -- sense pan.ts',
  )
  .parse();

const {
  workers,
  least,
  tests,
  static: withStatic = false,
} = command.opts<{
  workers: number;
  least: number;
  tests: string[];
  static?: boolean;
}>();

const missing = command.args.filter((part) => !existsSync(`${engine}/${part}`));
if (missing.length > 0)
  command.error(`not in ${engine}: ${missing.join(', ')}; there are ${readdirSync(engine).join(', ')}`, {
    exitCode: exitWrong,
  });

const sources = new Map(
  globSync('**/*.ts', { cwd: engine }).map((file) => [file, readFileSync(`${engine}/${file}`, 'utf8')]),
);
process.env[testsVariable] = JSON.stringify(tests);
const results = await new Stryker({
  mutate:
    command.args.length === 0
      ? [`${engine}/**/*.ts`]
      : command.args.map((part) => `${engine}/${part.endsWith('.ts') ? part : `${part}/**/*.ts`}`),
  testRunner: 'in-process',
  plugins: [fileURLToPath(new URL('./in-process.ts', import.meta.url))],
  // Modules loaded anew are never let go of.
  maxTestRunnerReuse: 100,
  // An endless loop is told by its hits; the clock of a busy machine tells nothing.
  timeoutMS: 120_000,
  coverageAnalysis: 'perTest',
  ignoreStatic: !withStatic,
  concurrency: workers,
  reporters: ['progress-append-only'],
  tempDirName: '.mutation',
  ignorePatterns: ['desktop', 'dist', 'tests/end-to-end', '*.md', '.ci'],
  disableTypeChecks: false,
  allowEmpty: true,
}).runMutationTest();

const { lines, score } = scored(results, equivalents, (file) => sources.get(file) ?? '');
console.log(lines.join('\n'));
if (score < least) process.exitCode = exitLow;
