import { existsSync, readFileSync } from 'node:fs';
import { Command } from 'commander';
import { z } from 'zod';
import { logPath } from '../../controller/log/log.ts';
import {
  type ImportMap,
  importedName,
  importMapSchema,
  mapNameSchema,
} from '../../shared-types/foreign-log.ts';
import { findLoop } from './find-loop.ts';
import { ImportRefused } from './import-refused.ts';
import { keepMap, mapsFile, readKeptMaps } from './kept-maps.ts';
import { reportText } from './report-text.ts';
import { takeIn } from './take-in.ts';

/** Exit codes: 0 all understood, 2 nothing could be read, 3 something was not taken as it stood there. */
const exitCodes = { understood: 0, wrong: 2, missed: 3 } as const;

const help = `
Example of a map:
  {"time": {"column": "When", "format": "day-month-year", "zone": "Europe/Lisbon"},
   "values": [{"column": "Roof", "channel": "panOutletC", "unit": "F"}],
   "pump": {"column": "Pump", "unit": "on-off"}}

Examples:
  npm run import -- logger.csv --map map.json --site north-roof --preview
  npm run import -- logger.csv --map map.json --site north-roof --keep-map "Old logger"
  npm run import -- logger-2.csv --map "Old logger" --site north-roof

The days become those of a site of their own, such as north-roof-imported. All of a file is taken in, or nothing.
Ends with 0 when all was understood, 3 when something was not taken as it stood there, 2 when nothing was taken.`;

interface Flags {
  readonly map: string;
  readonly site?: string;
  readonly data: string;
  readonly preview?: boolean;
  readonly replace?: boolean;
  readonly keepMap?: string;
  readonly json?: boolean;
}

const program = new Command('import')
  .description('Takes the days of another logger in: reads its CSV by a map of its columns.')
  .argument('<file>', 'the CSV')
  .requiredOption(
    '--map <file or name>',
    'which column is what: a JSON file, or the name of a map that was kept',
  )
  .option('--site <file or name>', 'the loop: its site file, or its name below the data folder')
  .option('--data <folder>', 'folder of the logs', 'data')
  .option('--preview', 'keep nothing, only tell what would be')
  .option('--replace', 'where the log holds another value for the same instant, take that of the file')
  .option('--keep-map <name>', 'keep the map under a name')
  .option('--json', 'print the report as JSON')
  .addHelpText('after', help)
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : exitCodes.wrong))
  .parse(process.argv);

process.exitCode = await run(program.args[0] ?? '', program.opts<Flags>());

async function run(file: string, flags: Flags): Promise<number> {
  const { data, site, json, preview = false, replace, keepMap: name } = flags;
  try {
    const map = readMap(flags.map, data);
    const found = findLoop(data, site);
    if (!found.ok) return refuse(found.faults);
    if (name !== undefined) keepMap(mapsFile(data), mapNameSchema.parse(name), map);
    const imported = importedName(found.loop.site.name);
    const outcome = await takeIn(file, {
      ...found.loop,
      map,
      logPath: logPath(data, imported),
      write: !preview,
      clash: replace === true ? 'replace' : 'keep',
      goOn: tellProgress(),
    });
    if (!outcome.ok) return refuse(outcome.faults);
    const { report } = outcome;
    const where = preview ? 'preview, nothing was kept' : `kept as days of ${imported}`;
    console.log(json === true ? JSON.stringify(report) : `${reportText(report)}\n${where}`);
    return report.places.length === 0 ? exitCodes.understood : exitCodes.missed;
  } catch (thrown) {
    return refuse([thrown instanceof Error ? thrown.message : String(thrown)]);
  }
}

/** @throws Error in words when there is no such map. */
function readMap(wanted: string, data: string): ImportMap {
  const kept = existsSync(wanted)
    ? undefined
    : readKeptMaps(mapsFile(data)).find(({ name }) => name === wanted);
  if (kept !== undefined) return kept.map;
  if (!existsSync(wanted)) throw new ImportRefused(`no file and no kept map is called '${wanted}'`);
  const parsed = importMapSchema.safeParse(JSON.parse(readFileSync(wanted, 'utf8')));
  if (parsed.success) return parsed.data;
  throw new ImportRefused(`${wanted} is no map of columns:\n${z.prettifyError(parsed.error)}`);
}

/** Each tenth once, where a person looks on. */
function tellProgress(): (doneFraction: number) => boolean {
  let told = 0;
  return (doneFraction) => {
    const tenths = Math.floor(doneFraction * 10);
    if (tenths > told && process.stderr.isTTY) process.stderr.write(`${tenths * 10} %\n`);
    told = Math.max(told, tenths);
    return true;
  };
}

function refuse(faults: readonly string[]): number {
  console.error(`import: ${faults.join('; ')}`);
  return exitCodes.wrong;
}
