import { Command } from 'commander';
import { benchAlarms } from './alarms.ts';
import { benchCalendar } from './calendar.ts';
import { benchDrawing } from './drawing.ts';
import { benchEmbedded } from './embedded.ts';
import { benchFailures } from './failures.ts';
import { benchHarvest } from './harvest.ts';
import { benchHindsight } from './hindsight.ts';
import { benchMemory } from './memory.ts';
import { benchPan } from './pan.ts';
import { benchReplay } from './replay.ts';
import { benchScreen } from './screen.ts';
import { benchSimulate } from './simulate.ts';
import { benchStep } from './step.ts';
import { benchWatching } from './watching.ts';
import { benchWhatIf } from './whatif.ts';

/** Every benchmark by name, in the order in which they run. */
const benches = {
  step: benchStep,
  replay: benchReplay,
  embedded: benchEmbedded,
  simulate: benchSimulate,
  harvest: benchHarvest,
  hindsight: benchHindsight,
  screen: benchScreen,
  drawing: benchDrawing,
  calendar: benchCalendar,
  watching: benchWatching,
  memory: benchMemory,
  failures: benchFailures,
  alarms: benchAlarms,
  whatif: benchWhatIf,
  pan: benchPan,
} as const;
type BenchName = keyof typeof benches;
const names = Object.keys(benches) as BenchName[];

const command = new Command('npm run bench --')
  .description('Measures and prints one JSON line a figure. Times are of this machine, at this hour.')
  .argument('[names...]', `some of ${names.join(', ')}; all of them otherwise`)
  .option('--minutes <number>', 'how long the benches of memory and of watching watch', Number, 10)
  .option('--quick', 'fewer runs of the harvest and hindsight benches, a month for the calendar')
  .parse();

const wanted = command.args.length > 0 ? command.args : names;
const unknown = wanted.filter((name) => !Object.hasOwn(benches, name));
if (unknown.length > 0) command.error(`no such bench: ${unknown.join(', ')}; there are ${names.join(', ')}`);
for (const name of wanted as BenchName[])
  await benches[name](command.opts<{ minutes: number; quick?: boolean }>());
