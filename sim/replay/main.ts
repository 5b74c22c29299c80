import { Command } from 'commander';
import type { LogReader } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import { findLog } from './find-log.ts';
import { replayDay } from './replay-day.ts';
import { dayList, reportText } from './report-text.ts';

/** Exit codes: 0 all the same, 2 nothing to replay, 3 something differs. */
const exitCodes = { same: 0, wrong: 2, different: 3 } as const;

interface Flags {
  readonly site?: string;
  readonly data: string;
  readonly json?: boolean;
}

const program = new Command('replay')
  .description('Replays a logged day: does the same logic decide the same again?')
  .argument('<day>', 'a local day such as 2031-06-21, or latest, or list')
  .option('--site <name>', 'site whose log is read, where there are several')
  .option('--data <folder>', 'folder of the logs', 'data')
  .option('--json', 'print the report as JSON')
  .addHelpText(
    'after',
    '\nEnds with 0 when all is the same, 3 when something differs, 2 when it cannot be told.',
  )
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : exitCodes.wrong))
  .parse(process.argv);

process.exitCode = run(program.args[0] ?? '', program.opts<Flags>());

function run(wanted: string, { site, data, json }: Flags): number {
  const found = findLog(data, site);
  if (!found.ok) return refuse(found.why);
  const reader = openLogReader(found.path);
  try {
    const days = reader.days();
    if (days.length === 0) return refuse(['the log holds no day', ...reader.remarks].join('; '));
    if (wanted === 'list') {
      console.log(json ? JSON.stringify(days) : dayList(days));
      return exitCodes.same;
    }
    const day = wanted === 'latest' ? days.at(-1)?.day : days.find((kept) => kept.day === wanted)?.day;
    if (day === undefined)
      return refuse(`nothing of '${wanted}' is kept; there are: ${days.map((kept) => kept.day).join(', ')}`);
    return tell(reader, day, json === true);
  } finally {
    reader.close();
  }
}

function tell(reader: LogReader, day: string, json: boolean): number {
  let report: ReturnType<typeof replayDay>;
  try {
    report = replayDay(reader, day);
  } catch (thrown) {
    if (thrown instanceof RangeError) return refuse(thrown.message);
    throw thrown;
  }
  console.log(json ? JSON.stringify(report) : reportText(report, zoneOf(reader, day)));
  return report.same ? exitCodes.same : exitCodes.different;
}

/** The zone in force when the day began. */
function zoneOf(reader: LogReader, day: string): string {
  for (const record of reader.records(day)) return reader.site(record.siteRevision)?.timeZone ?? 'UTC';
  return 'UTC';
}

function refuse(why: string): number {
  console.error(`replay: ${why}`);
  return exitCodes.wrong;
}
