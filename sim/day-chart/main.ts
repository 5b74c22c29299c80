import { writeFileSync } from 'node:fs';
import { Command } from 'commander';
import { drawDay } from './draw.ts';
import { liveDay } from './live-day.ts';

/** Exit codes: 0 drawn, 2 wrong options or files. */
const program = new Command('chart')
  .description('Draws what the controller did on one simulated day: temperatures, sun, phases, reasons.')
  .argument('<scenario>', 'scenario file, such as sim/scenarios/days/broken-cloud.yaml')
  .option('--days-before <number>', 'days that the controller has known the loop for', Number, 2)
  .requiredOption('--to <file>', 'the drawing, an SVG file')
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : 2))
  .parse();

const { daysBefore, to } = program.opts<{ daysBefore: number; to: string }>();
const day = liveDay(program.args[0] ?? '', daysBefore);
if (day.ok) writeFileSync(to, drawDay(day.value));
else for (const fault of day.faults) console.error(`chart: ${fault}`);
process.exitCode = day.ok ? 0 : 2;
