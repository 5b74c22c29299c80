import { Command, InvalidArgumentError } from 'commander';
import { type SettingName, type SettingsPatch, settingNames } from '../../shared-types/settings.ts';
import { course } from './course.ts';
import { enginePolicy } from './engine-policy.ts';
import { heldAside } from './held-aside.ts';
import { type Result, runPolicy } from './run-policy.ts';
import { type Run, runsOf } from './runs.ts';
import { resultsOf, runners, verdictOf } from './verdict.ts';
import { headText, verdictText } from './verdict-text.ts';

const program = new Command('course')
  .description('Runs the engine and two plain thermostats over the harvest course, a line a run.')
  .argument('[parts...]', 'only runs whose name holds one of these, such as clear or reservoir')
  .option('--set <name=value>', 'a setting of the engine, again and again', addSetting, {} as SettingsPatch)
  .option('--engine-only', 'without the thermostats')
  .option('--best', 'shares of the best that anybody could do as well; takes some seconds a run')
  .option('--held-aside', 'the days on which nothing is tuned')
  .parse();

interface Options {
  readonly set: SettingsPatch;
  readonly engineOnly?: true;
  readonly best?: true;
  readonly heldAside?: true;
}

function addSetting(text: string, before: SettingsPatch): SettingsPatch {
  const [name = '', value = ''] = text.split('=');
  if (!settingNames.includes(name as SettingName) || value === '' || Number.isNaN(Number(value)))
    throw new InvalidArgumentError('A setting is like stopDifferenceK=1.5.');
  return { ...before, [name]: Number(value) };
}

const { set, engineOnly, best, heldAside: aside } = program.opts<Options>();
const parts = program.args;
const chosen = runsOf(aside ? heldAside : course).filter(
  ({ name }) => parts.length === 0 || parts.some((part) => name.includes(part)),
);

const cell = ({ harvestJ, fills, starts, electricityJ, hottestStoreC }: Result) =>
  `${(harvestJ / 3.6e6).toFixed(2).padStart(7)} kWh ${String(fills).padStart(3)} f ${String(starts).padStart(3)} s ` +
  `${(electricityJ / 3600).toFixed(0).padStart(4)} Wh ${hottestStoreC.toFixed(0).padStart(2)} C`;

function lineOf(run: Run): string {
  if (best) return verdictText(verdictOf(run, set));
  const results = engineOnly ? [runPolicy(run, enginePolicy(run, set))] : Object.values(resultsOf(run, set));
  return [run.name.padEnd(28), ...results.map(cell)].join(' | ');
}

console.log(best ? headText() : [''.padEnd(28), ...runners].join(' | '));
for (const run of chosen) console.log(lineOf(run));
