import { Command } from 'commander';
import { openLogReader } from '../../../controller/log/reader.ts';
import { readFit } from '../../identify/loop-file.ts';
import { findLog } from '../find-log.ts';
import { newestRule } from '../newest-rule.ts';
import { readWholeDays } from '../whole-days.ts';
import { logMarkOf } from './log-mark.ts';
import { loopsOf } from './loops.ts';
import { tellProgress } from './progress.ts';
import { readRanges } from './ranges.ts';
import { reportText } from './report-text.ts';
import { type SweepOptions, sweep } from './sweep.ts';

/** Exit codes: 0 all tried, 2 nothing could be, 3 some days or settings were left out, 130 interrupted. */
const exitCodes = { whole: 0, wrong: 2, inPart: 3, interrupted: 130 } as const;

interface Flags {
  readonly over: string[];
  readonly site?: string;
  readonly data: string;
  readonly workers: number;
  readonly samples: number;
  readonly seed: number;
  readonly resume?: string;
  readonly json?: boolean;
}

const help = `
Example:
  sweep 2031-06-01..2031-06-14 --over startDifferenceK=2:8:4 --over fillsPerDay=1:4:4 --workers 2

Interrupted with a resume file, the same command goes on where it stopped. Nothing is ever applied.
Ends with 0 when all was tried, 3 when days or settings were left out, 130 when it was interrupted, 2 when
nothing could be tried.`;

const collect = (value: string, list: string[]) => [...list, value];
const program = new Command('sweep')
  .description(
    'Tries many settings on logged days in a simulated loop: heat against starts, fills and pump energy.',
  )
  .argument('<day>', 'a day, or FROM..TO with both days, or latest')
  .requiredOption(
    '--over <setting=from:to:values>',
    'a range of a setting; may be given several times',
    collect,
    [],
  )
  .option('--site <name>', 'site whose log is read, where there are several')
  .option('--data <folder>', 'folder of the logs', 'data')
  .option('--workers <number>', 'threads, 1 to 64', Number, 1)
  .option('--samples <number>', 'loops drawn for the bands, 0 to 100', Number, 4)
  .option('--seed <number>', 'picks the noise, the drawn loops and the sample of settings', Number, 1)
  .option('--resume <file>', 'keeps what was found in this file, and goes on from it')
  .option('--json', 'print the report as JSON')
  .addHelpText('after', help)
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : exitCodes.wrong))
  .parse(process.argv);

process.exitCode = await run(program.args[0] ?? '', program.opts<Flags>());

async function run(wanted: string, flags: Flags): Promise<number> {
  try {
    const interrupt = new AbortController();
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => interrupt.abort());
    const options = optionsOf(wanted, flags);
    const report = await sweep({
      ...options,
      signal: interrupt.signal,
      onProgress: tellProgress(process.stderr),
    });
    if (report === undefined) return interrupted(flags.resume);
    console.log(flags.json ? JSON.stringify(report) : reportText(report));
    const whole = report.refused.length === 0 && report.days.length === options.days.length;
    return whole ? exitCodes.whole : exitCodes.inPart;
  } catch (thrown) {
    console.error(`sweep: ${thrown instanceof Error ? thrown.message : thrown}`);
    return exitCodes.wrong;
  }
}

/** @throws RangeError in words for what cannot be meant. */
function optionsOf(wanted: string, flags: Flags): SweepOptions {
  const workers = wholeNumber('--workers', flags.workers, 1, 64);
  const samples = wholeNumber('--samples', flags.samples, 0, 100);
  const seed = wholeNumber('--seed', flags.seed, 0, 2 ** 31);
  const ranges = readRanges(flags.over);
  const found = findLog(flags.data, flags.site);
  if (!found.ok) throw new RangeError(found.why);
  const reader = openLogReader(found.path);
  try {
    const kept = reader.days().map(({ day }) => day);
    const rule = newestRule(reader);
    if (rule === undefined)
      throw new RangeError(
        ['the log holds no step with its site and settings', ...reader.remarks].join('; '),
      );
    const read = readWholeDays(wanted, kept);
    if (!read.ok) throw new RangeError(read.why);
    const { loops, remarks } = loopsOf(readFit(found.path, rule.site.name), samples, seed);
    return {
      logPath: found.path,
      days: read.days,
      logMark: logMarkOf(reader, read.days),
      ranges,
      settingsInForce: rule.settings,
      loops,
      loopRemarks: remarks,
      seed,
      workers,
      resumeFile: flags.resume,
    };
  } finally {
    reader.close();
  }
}

function wholeNumber(option: string, value: number, least: number, most: number): number {
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw new RangeError(`${option} is a whole number from ${least} to ${most}`);
}

function interrupted(resume: string | undefined): number {
  console.error(
    resume === undefined
      ? 'sweep: interrupted; nothing was kept, since no --resume FILE was given'
      : `sweep: interrupted; the same command goes on from ${resume}`,
  );
  return exitCodes.interrupted;
}
