import { formatSiteFault, readSiteFile } from '../../controller/site-file.ts';
import type { Site } from '../../shared-types/site.ts';
import { createMqttPort } from './mqtt-port.ts';
import { type DeviceCommand, readDeviceCommand, readPassword } from './options.ts';
import type { DevicePort, PortEvents } from './port.ts';
import { runDevice } from './run.ts';
import { createSerialPort } from './serial-port.ts';

const command = readDeviceCommand(process.argv);
const read = readSiteFile(command.siteFile);
if (!read.ok) fail(read.faults.map(formatSiteFault));
const { site } = read;
const makePort = portMaker(command, site);

const stop = await runDevice({
  site,
  clock: command.clock,
  seed: command.seed,
  wishes: command.fault,
  makePort,
  say: (text) => console.error(`device: ${text}`),
  ...(command.weather === undefined ? {} : { kinds: command.weather }),
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

function portMaker(flags: DeviceCommand, site: Site): (events: PortEvents) => DevicePort {
  const { link } = site;
  const baud = link.kind === 'serial' ? link.baud : 115_200;
  const path = flags.serial ?? (link.kind === 'serial' && flags.broker === undefined ? link.path : undefined);
  if (path !== undefined) return (events) => createSerialPort({ site, path, baud }, events);
  const url = flags.broker ?? (link.kind === 'mqtt' ? link.url : undefined);
  if (url === undefined) fail(['the site file names no broker: give one with --broker URL']);
  const password = passwordOf(flags);
  return (events) =>
    createMqttPort(
      {
        site,
        url,
        ...(flags.username === undefined ? {} : { username: flags.username }),
        ...(password === undefined ? {} : { password }),
      },
      events,
    );
}

function passwordOf({ passwordFile }: DeviceCommand): string | undefined {
  try {
    return readPassword(passwordFile);
  } catch {
    return fail([`the password file ${passwordFile} cannot be read`]);
  }
}

function fail(lines: readonly string[]): never {
  for (const line of lines) console.error(line);
  process.exit(2);
}
