import { Command, InvalidArgumentError } from 'commander';
import {
  type CounterfactualResult,
  counterfactualOf,
  fitOfDaysBefore,
  summaryOf,
} from '../support/counterfactual.ts';
import { counterfactualCase, type SensorSet } from '../support/counterfactual-cases.ts';

/**
 * Does a logged day that is lived again under other settings bring the heat that the loop really brings under them? On
 * drawn loops, places and days that nothing was tuned on. Ends with 1 when a bound is missed.
 */
const program = new Command('counterfactual')
  .option('--days <number>', 'drawn days for each set of sensors', countOf(1), 30)
  .option('--seed <number>', 'picks them', countOf(0), 5001)
  .option('--samples <number>', 'loops drawn for each band', countOf(1), 12)
  .option('--sensors <set>', 'full, least or both', 'both')
  .parse(process.argv);

const { days, seed, samples, sensors } = program.opts<{
  days: number;
  seed: number;
  samples: number;
  sensors: string;
}>();

function countOf(least: number): (text: string) => number {
  return (text) => {
    if (!/^\d+$/.test(text) || Number(text) < least)
      throw new InvalidArgumentError(`A whole number from ${least}.`);
    return Number(text);
  };
}

function runSet(set: SensorSet): boolean {
  const results: CounterfactualResult[] = [];
  for (let number = 0; number < days; number++) {
    const one = counterfactualCase(seed + number, set);
    const result = counterfactualOf(one, fitOfDaysBefore(one), samples);
    results.push(result);
    console.log(result.text);
  }
  const summary = summaryOf(set, results);
  console.log(summary.text);
  return summary.holds;
}

const sets: readonly SensorSet[] =
  sensors === 'both' ? ['full', 'least'] : [sensors === 'least' ? 'least' : 'full'];
const held = sets.map(runSet);
process.exitCode = held.every(Boolean) ? 0 : 1;
