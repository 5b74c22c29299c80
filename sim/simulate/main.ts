import { Command, InvalidArgumentError } from 'commander';
import { type LocalMoment, parseStart } from '../device/local-moment.ts';
import { runSimulation } from './run.ts';

/** Exit codes: 0 simulated, 1 the loop is impossible, 2 wrong options or files, 3 books that do not close. */
const program = new Command('simulate')
  .description('Runs loop and controller through days, months or a year at once, and says what came home.')
  .option('--scenario <file>', 'scenario: site, weather, traits of the loop, faults')
  .option('--site <file>', 'site file alone; weather is invented by the seed')
  .option('--from <day>', 'first day such as 2031-01-01; the scenario may name another', dayOf)
  .option('--days <number>', 'how many days', countOf(1, 3660), 365)
  .option('--step <seconds>', 'step of loop and controller', countOf(1, 10), 10)
  .option('--seed <number>', 'picks weather and noise in place of the scenario', countOf(0, 999_999_999))
  .option('--json', 'print the report as JSON')
  .addHelpText(
    'after',
    '\nEnds with 0 when it ran, 1 when such a loop cannot be, 2 for wrong options or files, 3 when its books do not close.' +
      '\nThe same scenario, seed and step give the same report.',
  )
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : 2))
  .parse();

process.exitCode = runSimulation(program.opts());

function dayOf(text: string): LocalMoment {
  const day = parseStart(text);
  const year = Number(day?.date?.slice(0, 4));
  if (day === undefined || year < 1950 || year > 2200)
    throw new InvalidArgumentError('A day is like 2031-01-01, in the years 1950 to 2200.');
  return day;
}

function countOf(least: number, most: number): (text: string) => number {
  return (text) => {
    const count = /^\d+$/.test(text) ? Number(text) : Number.NaN;
    if (!(count >= least && count <= most))
      throw new InvalidArgumentError(`A whole number from ${least} to ${most}.`);
    return count;
  };
}
