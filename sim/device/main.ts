import { anchoredClock, type Clock, formatAnchor } from '../../controller/clock.ts';
import { formatSiteFault, readSiteFile } from '../../controller/site-file.ts';
import { impossibilities, impossibilityText } from '../plant/impossible.ts';
import { partsOf } from '../plant/parts.ts';
import { readScenario } from '../scenario/read.ts';
import { plainScenario, type Scenario } from '../scenario/scenario.ts';
import { misfitOf } from './fault-text.ts';
import { type DeviceCommand, readDeviceCommand } from './options.ts';
import { portOf } from './port-maker.ts';
import { runDevice } from './run.ts';

const say = (text: string) => console.error(`device: ${text}`);
const command = readDeviceCommand(process.argv);
const scenario = scenarioOf(command);
for (const repair of scenario.repairs) say(repair);
const impossible = impossibilities(partsOf(scenario.site, scenario.setup));
if (impossible.length > 0) fail(impossible.map(impossibilityText));
const chosen = portOf(command, scenario.site);
if (!chosen.ok) fail([chosen.why]);
for (const { fault } of [...scenario.wishes, ...command.fault]) {
  const misfit = misfitOf(fault, scenario.site, chosen.serial);
  if (misfit !== undefined) fail([misfit]);
}

const stop = await runDevice({
  scenario,
  clock: command.clock ?? clockOf(scenario),
  wishes: command.fault,
  makePort: chosen.make,
  say,
  ...(command.plantState === undefined ? {} : { plantStateFile: command.plantState }),
});

let stopping = false;
const end = async () => {
  if (stopping) return;
  stopping = true;
  await stop();
  process.exit(0);
};
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end);
// A parent that is gone takes its channel along; nobody else would end this process then.
process.on('disconnect', end);
console.log('device ready');

function scenarioOf({ site, scenario, seed, weather }: DeviceCommand): Scenario {
  if (scenario !== undefined) {
    const read = readScenario(scenario, {
      ...(site === undefined ? {} : { siteFile: site }),
      ...(seed === undefined ? {} : { seed }),
      ...(weather === undefined ? {} : { kinds: weather }),
    });
    return read.ok ? read.value : fail(read.faults);
  }
  const read = readSiteFile(site ?? '');
  return read.ok ? plainScenario(read.site, seed ?? 1, weather) : fail(read.faults.map(formatSiteFault));
}

/** The wall's clock at a speed, or the scenario's calendar from now on. */
function clockOf({ startMs }: Scenario): Clock {
  const atWallMs = Date.now();
  const anchor = { showsMs: startMs ?? atWallMs, atWallMs, speed: command.speed };
  if (startMs !== undefined) say(`lives by --clock ${formatAnchor(anchor)}; its controller needs the same`);
  return anchoredClock(anchor);
}

function fail(lines: readonly string[]): never {
  for (const line of lines) console.error(line);
  process.exit(2);
}
