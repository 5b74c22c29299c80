import { Command } from 'commander';
import { openLogReader } from '../../controller/log/reader.ts';
import type { LoopFit } from '../../shared-types/tuning.ts';
import { findLog } from '../replay/find-log.ts';
import { daysAsked } from './days-asked.ts';
import { fitDays } from './fit-days.ts';
import { fitText } from './fit-text.ts';
import { fitPath, keepFit } from './loop-file.ts';

/** Exit codes: 0 fitted, 2 nothing to fit or wrong options, 4 it did not converge. */
const exitCodes = { fitted: 0, wrong: 2, notConverged: 4 } as const;

interface Flags {
  readonly site?: string;
  readonly data: string;
  readonly json?: boolean;
  readonly keep?: boolean;
}

const program = new Command('fit')
  .description(
    "Finds the loop's parameters from logged days, with their errors, and says what the days cannot tell.",
  )
  .argument('<days...>', 'local days such as 2031-06-21, FROM..TO for all between, or latest')
  .option('--site <name>', 'site whose log is read, where there are several')
  .option('--data <folder>', 'folder of the logs', 'data')
  .option('--keep', 'keep the fit beside the log, for whoever tries other settings')
  .option('--json', 'print the fit as JSON')
  .addHelpText(
    'after',
    '\nEnds with 0 when a fit was found, 4 when it did not converge, 2 when there is nothing to fit.',
  )
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : exitCodes.wrong))
  .parse(process.argv);

process.exitCode = run(program.args, program.opts<Flags>());

function run(wanted: readonly string[], { site, data, json, keep }: Flags): number {
  const found = findLog(data, site);
  if (!found.ok) return refuse(found.why);
  const reader = openLogReader(found.path);
  try {
    const asked = daysAsked(
      wanted,
      reader.days().map(({ day }) => day),
    );
    if (!asked.ok) return refuse([asked.why, ...reader.remarks].join('; '));
    const fit = fitDays(reader, asked.days, (text) => console.error(`fit: ${text}`) === undefined);
    if (!fit.ok) return refuse(fit.why.join('; '));
    console.log(json ? JSON.stringify(fit.fit) : fitText(fit.fit));
    if (!fit.fit.converged) return exitCodes.notConverged;
    if (keep) keepAndTell(found.path, fit.fit);
    return exitCodes.fitted;
  } finally {
    reader.close();
  }
}

function keepAndTell(path: string, fit: LoopFit): void {
  keepFit(path, fit);
  console.error(`fit: kept in ${fitPath(path, fit.site)}`);
}

function refuse(why: string): number {
  console.error(`fit: ${why}`);
  return exitCodes.wrong;
}
