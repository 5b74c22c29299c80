import type { Site } from '../../shared-types/site.ts';
import { createMqttPort } from './mqtt-port.ts';
import { type DeviceCommand, readPassword } from './options.ts';
import type { DevicePort, PortEvents } from './port.ts';
import { createSerialPort } from './serial-port.ts';

type ChosenPort =
  | { readonly ok: true; readonly serial: boolean; readonly make: (events: PortEvents) => DevicePort }
  | { readonly ok: false; readonly why: string };

/** The port that options or site file ask for; the options go before. */
export function portOf(flags: DeviceCommand, site: Site): ChosenPort {
  const { link } = site;
  const path = flags.serial ?? (link.kind === 'serial' && flags.broker === undefined ? link.path : undefined);
  if (path !== undefined) {
    const baud = link.kind === 'serial' ? link.baud : 115_200;
    return { ok: true, serial: true, make: (events) => createSerialPort({ site, path, baud }, events) };
  }
  const url = flags.broker ?? (link.kind === 'mqtt' ? link.url : undefined);
  if (url === undefined)
    return { ok: false, why: 'the site file names no broker: give one with --broker URL' };
  const { username, passwordFile } = flags;
  let password: string | undefined;
  try {
    password = readPassword(passwordFile);
  } catch {
    return { ok: false, why: `the password file ${passwordFile} cannot be read` };
  }
  const account = {
    ...(username === undefined ? {} : { username }),
    ...(password === undefined ? {} : { password }),
  };
  return { ok: true, serial: false, make: (events) => createMqttPort({ site, url, ...account }, events) };
}
