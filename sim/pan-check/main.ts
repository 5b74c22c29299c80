import { Command } from 'commander';
import type { LogReader } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import type { PanFinding } from '../../shared-types/pan-check.ts';
import { daysAsked } from '../identify/days-asked.ts';
import { readFit } from '../identify/loop-file.ts';
import { findLog } from '../replay/find-log.ts';
import { newestRule } from '../replay/newest-rule.ts';
import { tellFraction } from '../replay/tell-fraction.ts';
import { checkPan, type PanCheckOptions } from './check-pan.ts';
import { panCheckText } from './report-text.ts';

/** Exit codes: 0 as good or better, 1 something was found, 2 too little to tell or wrong options. */
const exitCodes = { asGood: 0, found: 1, wrong: 2 } as const;

const noDays = { ok: true, days: [] } as const;
/** What asks nothing of anybody. */
const calm: ReadonlySet<PanFinding['code']> = new Set([
  'as-good',
  'not-sure',
  'gathers-more',
  'loses-less',
  'contact-better',
]);

interface Flags {
  readonly site?: string;
  readonly data: string;
  readonly reference?: readonly string[];
  readonly json?: boolean;
}

const program = new Command('pan-check')
  .description(
    'Looks whether the pan gathers and loses as it did: measured heat against what the pan of earlier days would have given.',
  )
  .argument('<days...>', 'local days such as 2031-06-21, FROM..TO for all between, or latest')
  .option('--reference <days...>', 'days to compare with (default: the oldest of those looked at)')
  .option('--site <name>', 'site whose log is read, where there are several')
  .option('--data <folder>', 'folder of the logs', 'data')
  .option('--json', 'print the check as JSON')
  .addHelpText(
    'after',
    '\nEnds with 0 when the pan is as good as it was, 1 when something was found, 2 when there is too little to tell.',
  )
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : exitCodes.wrong))
  .parse(process.argv);

process.exitCode = run(program.args, program.opts<Flags>());

function run(wanted: readonly string[], { site, data, reference, json }: Flags): number {
  const found = findLog(data, site);
  if (!found.ok) return refuse(found.why);
  const reader = openLogReader(found.path);
  try {
    const kept = reader.days().map(({ day }) => day);
    const days = daysAsked(wanted, kept);
    if (!days.ok) return refuse([days.why, ...reader.remarks].join('; '));
    const before = reference === undefined ? noDays : daysAsked(reference, kept);
    if (!before.ok) return refuse(before.why);
    return check(reader, found.path, { days: days.days, referenceDays: before.days }, json === true);
  } finally {
    reader.close();
  }
}

function check(
  reader: LogReader,
  path: string,
  asked: Pick<PanCheckOptions, 'days' | 'referenceDays'>,
  asJson: boolean,
): number {
  const kept = readFit(path, newestRule(reader)?.site.name ?? '');
  const checked = checkPan(reader, { ...asked, fit: kept.ok ? kept.fit : null, goOn: tellFraction });
  if (checked === undefined) return refuse('it was given up');
  if (!checked.ok) return refuse(checked.why.join('; '));
  console.log(asJson ? JSON.stringify(checked.check) : panCheckText(checked.check));
  const codes = checked.check.findings.map(({ code }) => code);
  if (codes.includes('nothing-to-compare')) return exitCodes.wrong;
  return codes.every((code) => calm.has(code)) ? exitCodes.asGood : exitCodes.found;
}

function refuse(why: string): number {
  console.error(`pan-check: ${why}`);
  return exitCodes.wrong;
}
