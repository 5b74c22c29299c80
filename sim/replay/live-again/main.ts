import { Command, InvalidArgumentError } from 'commander';
import type { LogReader } from '../../../controller/log/log.ts';
import { openLogReader } from '../../../controller/log/reader.ts';
import { type Settings, settingNames, settingsSchema } from '../../../shared-types/settings.ts';
import { readFit } from '../../identify/loop-file.ts';
import { readSpan } from '../../identify/world/span.ts';
import { findLog } from '../find-log.ts';
import { tellFraction } from '../tell-fraction.ts';
import { readWholeDays } from '../whole-days.ts';
import { compareDay, usualSamples } from './compare-day.ts';
import { comparisonText } from './report-text.ts';

/** Exit codes: 0 compared, 2 wrong options, refused settings or too little of the day. */
const exitCodes = { compared: 0, wrong: 2 } as const;

interface Flags {
  readonly set: Partial<Settings>;
  readonly site?: string;
  readonly data: string;
  readonly samples: number;
  readonly best?: true;
  readonly json?: true;
}

const program = new Command('whatif')
  .description('Lives a logged day again: what would other settings have brought?')
  .argument('<day>', 'a local day such as 2031-06-21, or latest')
  .option('--set <name=value>', 'a setting to be tried, again and again', addSetting, {} as Partial<Settings>)
  .option('--site <name>', 'site whose log is read, where there are several')
  .option('--data <folder>', 'folder of the logs', 'data')
  .option('--samples <number>', 'loops that are drawn for the bands, 0 to 200', countOf, usualSamples)
  .option('--best', 'the most that perfect foresight could bring as well; takes some seconds')
  .option('--json', 'print the comparison as JSON')
  .addHelpText(
    'after',
    '\nTakes the fit of the loop that is kept beside the log, if there is one.' +
      '\nEnds with 0 when it compared, 2 for wrong options, refused settings or a day of which too little is kept.',
  )
  .exitOverride((error) => process.exit(error.exitCode === 0 ? exitCodes.compared : exitCodes.wrong))
  .parse(process.argv);

process.exitCode = run(program.args[0] ?? '', program.opts<Flags>());

function addSetting(text: string, before: Partial<Settings>): Partial<Settings> {
  const [name = '', value = ''] = text.split('=');
  const setting = settingNames.find((known) => known === name);
  if (setting === undefined) throw new InvalidArgumentError(`There is no setting '${name}'.`);
  if (value.trim() === '' || !Number.isFinite(Number(value)))
    throw new InvalidArgumentError('A setting is like startDifferenceK=4.');
  return { ...before, [setting]: Number(value) };
}

function countOf(text: string): number {
  const count = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (!(count <= 200)) throw new InvalidArgumentError('A whole number from 0 to 200.');
  return count;
}

function run(wanted: string, flags: Flags): number {
  const found = findLog(flags.data, flags.site);
  if (!found.ok) return refuse(found.why);
  const reader = openLogReader(found.path);
  try {
    const days = reader.days().map(({ day }) => day);
    const read = readWholeDays(wanted, days);
    if (!read.ok) return refuse([read.why, ...reader.remarks].join('; '));
    const [day, ...more] = read.days as [string, ...string[]];
    if (more.length > 0)
      return refuse(`'${wanted}' is more than the one day that can be lived again at a time`);
    return compare(reader, found.path, day, flags);
  } finally {
    reader.close();
  }
}

function compare(reader: LogReader, path: string, day: string, flags: Flags): number {
  const read = readSpan(reader, day);
  if (!read.ok) return refuse(read.why);
  const { site, settings } = read.span;
  const tried = triedOf({ ...(settings.at(-1)?.settings as Settings), ...flags.set });
  if (typeof tried === 'string') return refuse(tried);
  const kept = readFit(path, site.name);
  const comparison = compareDay(reader, day, tried, {
    ...(kept.ok ? { fit: kept.fit } : { fit: null, whyNoFit: kept.why }),
    samples: flags.samples,
    seed: 1,
    best: flags.best === true,
    goOn: tellFraction,
  });
  if (comparison === undefined) return refuse('it was given up');
  console.log(flags.json ? JSON.stringify(comparison) : comparisonText(comparison, site.timeZone));
  return exitCodes.compared;
}

/** Settings that hold together, or all that speaks against them. */
function triedOf(settings: Settings): Settings | string {
  const parsed = settingsSchema.safeParse(settings);
  if (parsed.success) return parsed.data;
  return parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; ');
}

function refuse(why: string): number {
  console.error(`whatif: ${why}`);
  return exitCodes.wrong;
}
