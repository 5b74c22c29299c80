import { formatSiteFault, readSiteFile } from '../../controller/site-file.ts';
import { createFaultBoard, raiseWishes } from '../device/fault-board.ts';
import { instantOf, type LocalMoment } from '../device/local-moment.ts';
import { impossibilities, impossibilityText } from '../plant/impossible.ts';
import { createPlant } from '../plant/state.ts';
import { readScenario } from '../scenario/read.ts';
import { plainScenario, type Scenario } from '../scenario/scenario.ts';
import { spanText } from './report-text.ts';
import { simulateSpan } from './span.ts';

export interface SimulateFlags {
  readonly scenario?: string;
  readonly site?: string;
  /** First local day. */
  readonly from?: LocalMoment;
  readonly days: number;
  readonly step: number;
  readonly seed?: number;
  readonly json?: boolean;
}

const exitCodes = { done: 0, impossible: 1, wrong: 2, open: 3 } as const;
/** Books that close do so to rounding; this is far beyond it. */
const closedFraction = 1e-6;
const usualSeed = 1;
const usualFrom: LocalMoment = { date: '2031-01-01', minuteOfDay: 0 };

/** Simulates what the flags ask for and prints what came of it. @returns the exit code. */
export function runSimulation(flags: SimulateFlags): number {
  const read = scenarioOf(flags);
  if (!read.ok) return refuse(read.faults, exitCodes.wrong);
  const { site, seed, weather, repairs, startMs, wishes, exactSensors, plantOptions } = read.value;
  const asked = flags.from === undefined ? startMs : instantOf(flags.from, 0, site.timeZone);
  const fromMs = asked ?? instantOf(usualFrom, 0, site.timeZone);
  const plant = createPlant(site, plantOptions(fromMs));
  const why = impossibilities(plant.parts);
  if (why.length > 0) return refuse(why.map(impossibilityText), exitCodes.impossible);
  for (const text of repairs) console.error(`simulate: ${text}`);
  const board = createFaultBoard(site);
  raiseWishes(board, wishes, fromMs, site.timeZone);
  const report = simulateSpan({
    site,
    plant,
    weather,
    seed,
    exactSensors,
    faultsAt: board.activeAt,
    fromMs,
    days: flags.days,
    stepS: flags.step,
    onDay: progressOf(flags.days),
  });
  console.log(flags.json === true ? JSON.stringify(report) : spanText(report));
  const { unexplainedHeatFraction, unexplainedWaterFraction } = report;
  if (Math.max(unexplainedHeatFraction, unexplainedWaterFraction) < closedFraction) return exitCodes.done;
  return refuse(['the books of heat and water do not close: do not believe these figures'], exitCodes.open);
}

function scenarioOf({ scenario, site, seed }: SimulateFlags): ReturnType<typeof readScenario> {
  if (scenario !== undefined)
    return readScenario(scenario, {
      ...(site === undefined ? {} : { siteFile: site }),
      ...(seed === undefined ? {} : { seed }),
    });
  if (site === undefined) return { ok: false, faults: ['--scenario FILE or --site FILE is needed'] };
  const read = readSiteFile(site);
  if (!read.ok) return { ok: false, faults: read.faults.map(formatSiteFault) };
  const plain: Scenario = plainScenario(read.site, seed ?? usualSeed);
  return { ok: true, value: plain };
}

/** Days done, on a line that is written over and over; ten lines where nobody watches. */
function progressOf(days: number): (doneDays: number) => void {
  const { stderr } = process;
  const every = Math.max(1, Math.floor(days / (stderr.isTTY ? 100 : 10)));
  return (doneDays) => {
    if (doneDays % every !== 0 && doneDays !== days) return;
    const text = `simulate: ${doneDays} of ${days} days`;
    if (stderr.isTTY) stderr.write(`\r${text}${doneDays === days ? '\n' : ''}`);
    else stderr.write(`${text}\n`);
  };
}

function refuse(lines: readonly string[], code: number): number {
  for (const line of lines) console.error(`simulate: ${line}`);
  return code;
}
