import { Command } from 'commander';
import type { LogReader } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import { findLog } from './find-log.ts';
import { newestRule } from './newest-rule.ts';
import { replaySpan } from './replay-span.ts';
import { dayList, reportText } from './report-text.ts';
import type { Span } from './span.ts';
import { readSpanText } from './span-text.ts';

/** Exit codes: 0 all the same, 2 nothing to replay, 3 something differs, 4 the same as far as it could be read. */
const exitCodes = { same: 0, wrong: 2, different: 3, inPart: 4 } as const;

interface Flags {
  readonly site?: string;
  readonly data: string;
  readonly json?: boolean;
}

const help = `
A span is a local day, such as 2031-06-21; or two of them, 2031-06-21..2031-06-24, both included; or two
instants, 2031-06-21T09:00..2031-06-21T12:30, on the clocks of the site unless they carry an offset.

Ends with 0 when all is the same, 3 when something differs, 4 when all is the same that could be read of a
damaged log, 2 when nothing could be replayed.`;

const program = new Command('replay')
  .description('Replays logged days: does the same logic decide the same again?')
  .argument('<day>', 'a day, FROM..TO, or latest, or list')
  .option('--site <name>', 'site whose log is read, where there are several')
  .option('--data <folder>', 'folder of the logs', 'data')
  .option('--json', 'print the report as JSON')
  .addHelpText('after', help)
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
    const timeZone = newestRule(reader)?.site.timeZone ?? 'UTC';
    const read = readSpanText(wanted, { days: days.map(({ day }) => day), timeZone });
    return read.ok ? tell(reader, read.span, timeZone, json === true) : refuse(read.why);
  } catch (thrown) {
    if (thrown instanceof RangeError) return refuse(thrown.message);
    throw thrown;
  } finally {
    reader.close();
  }
}

function tell(reader: LogReader, span: Span, timeZone: string, json: boolean): number {
  const report = replaySpan(reader, span);
  console.log(json ? JSON.stringify(report) : reportText(report, timeZone));
  if (!report.same) return exitCodes.different;
  return reader.remarks.length === 0 ? exitCodes.same : exitCodes.inPart;
}

function refuse(why: string): number {
  console.error(`replay: ${why}`);
  return exitCodes.wrong;
}
