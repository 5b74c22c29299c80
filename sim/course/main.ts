import { Command, InvalidArgumentError } from 'commander';
import { type SettingName, type SettingsPatch, settingNames } from '../../shared-types/settings.ts';
import { course } from './course.ts';
import { enginePolicy } from './engine-policy.ts';
import { heldAside } from './held-aside.ts';
import { type Result, runPolicy } from './run-policy.ts';
import { type Run, runsOf } from './runs.ts';
import { plainThermostat, thermostat } from './thermostat.ts';

const program = new Command('course')
  .description('Runs the engine and two plain thermostats over the harvest course, a line a run.')
  .argument('[parts...]', 'only runs whose name holds one of these, such as clear or reservoir')
  .option('--set <name=value>', 'a setting of the engine, again and again', addSetting, {} as SettingsPatch)
  .option('--engine-only', 'without the thermostats')
  .option('--held-aside', 'the days on which nothing is tuned')
  .parse();

interface Options {
  readonly set: SettingsPatch;
  readonly engineOnly?: true;
  readonly heldAside?: true;
}

function addSetting(text: string, before: SettingsPatch): SettingsPatch {
  const [name = '', value = ''] = text.split('=');
  if (!settingNames.includes(name as SettingName) || value === '' || Number.isNaN(Number(value)))
    throw new InvalidArgumentError('A setting is like stopDifferenceK=1.5.');
  return { ...before, [name]: Number(value) };
}

const { set, engineOnly, heldAside: aside } = program.opts<Options>();
const parts = program.args;
const chosen = runsOf(aside ? heldAside : course).filter(
  ({ name }) => parts.length === 0 || parts.some((part) => name.includes(part)),
);

const cell = ({ harvestJ, fills, starts, electricityJ, hottestStoreC }: Result) =>
  `${(harvestJ / 3.6e6).toFixed(2).padStart(7)} kWh ${String(fills).padStart(3)} f ${String(starts).padStart(3)} s ` +
  `${(electricityJ / 3600).toFixed(0).padStart(4)} Wh ${hottestStoreC.toFixed(0).padStart(2)} C`;

function lineOf(run: Run): string {
  const engine = runPolicy(run, enginePolicy(run.site, set));
  if (engineOnly) return cell(engine);
  const plain = runPolicy(run, thermostat(run.site, plainThermostat));
  const empties = runPolicy(run, thermostat(run.site, { ...plainThermostat, empties: true }));
  return [engine, plain, empties].map(cell).join('  | ');
}

console.log(
  `${'run'.padEnd(28)} engine                        | thermostat 8/4                 | the same, emptying`,
);
for (const run of chosen) console.log(`${run.name.padEnd(28)}${lineOf(run)}`);
