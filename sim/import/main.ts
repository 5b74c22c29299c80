import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { z } from 'zod';
import { type ImportMap, importMapSchema } from './map.ts';
import { readForeignCsv } from './read.ts';
import { reportText } from './report-text.ts';

/** Exit codes: 0 all understood, 2 nothing could be read, 3 something was not taken. */
const exitCodes = { understood: 0, wrong: 2, missed: 3 } as const;

const help = `
Example of a map:
  {"time": {"column": "When", "format": "day-month-year", "zone": "Europe/Lisbon"},
   "values": [{"column": "Roof", "channel": "panOutletC", "unit": "F"}]}

Ends with 0 when all was understood, 3 when something was not taken, 2 when nothing could be read.`;

const program = new Command('import')
  .description('Reads the CSV of another logger by a map of its columns and tells what it understood.')
  .argument('<file>', 'the CSV')
  .requiredOption('--map <file>', 'JSON file that says which column is what, in which unit')
  .option('--json', 'print the report as JSON')
  .addHelpText('after', help)
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : exitCodes.wrong))
  .parse(process.argv);

const { map: mapFile, json } = program.opts<{ map: string; json?: boolean }>();
process.exitCode = await run(program.args[0] ?? '');

async function run(file: string): Promise<number> {
  try {
    const outcome = await readForeignCsv(file, readMap(mapFile), { onProgress: tellProgress() });
    if (!outcome.ok) return refuse(outcome.faults.join('; '));
    console.log(json === true ? JSON.stringify(outcome.report) : reportText(outcome.report));
    return outcome.report.places.length === 0 ? exitCodes.understood : exitCodes.missed;
  } catch (thrown) {
    return refuse(thrown instanceof Error ? thrown.message : String(thrown));
  }
}

/** @throws Error in words when the file is no map. */
function readMap(path: string): ImportMap {
  const parsed = importMapSchema.safeParse(JSON.parse(readFileSync(path, 'utf8')));
  if (parsed.success) return parsed.data;
  throw new Error(`${path} is no map of columns:\n${z.prettifyError(parsed.error)}`);
}

/** Each tenth of the file once, where a person looks on. */
function tellProgress(): (doneFraction: number) => void {
  let told = 0;
  return (doneFraction) => {
    const tenths = Math.floor(doneFraction * 10);
    if (tenths > told && process.stderr.isTTY) process.stderr.write(`${tenths * 10} %\n`);
    told = Math.max(told, tenths);
  };
}

function refuse(why: string): number {
  console.error(`import: ${why}`);
  return exitCodes.wrong;
}
