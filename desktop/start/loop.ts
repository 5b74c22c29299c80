import { type ClockAnchor, formatAnchor } from '../../controller/clock.ts';
import { startChild } from './child.ts';
import type { Parts } from './parts.ts';
import { plantStatePath } from './places.ts';
import type { Play } from './play.ts';

/** Controller and simulated device at work. */
interface Loop {
  readonly brokerUrl: string;
  /** Why the first of both ended, in words. */
  readonly ended: Promise<string>;
}

export type LoopStart =
  | { readonly ok: true; readonly loop: Loop }
  | { readonly ok: false; readonly reason: string };

/** Starts the controller with its broker, then the device on that broker; both live by the same clock. */
export async function startLoop(
  parts: Parts,
  { siteFile, site, dataFolder, deviceArguments }: Play,
  anchor: ClockAnchor,
): Promise<LoopStart> {
  const clock = ['--clock', formatAnchor(anchor)];
  const controllerModule = new URL('../../controller/main.mjs', import.meta.url);
  const deviceModule = new URL('../../sim/device/main.ts', import.meta.url);
  const controller = parts.begin(() =>
    startChild(
      'controller',
      controllerModule,
      ['--site', siteFile, ...clock, '--data', dataFolder],
      brokerOf,
    ),
  );
  const brokerUrl = await controller.ready;
  if (brokerUrl === undefined) return { ok: false, reason: await controller.ended };

  const plantState = plantStatePath(dataFolder, site.name);
  const atBroker = ['--broker', brokerUrl, ...credentialArguments(site)];
  const arguments_ = [...deviceArguments, ...clock, ...atBroker, '--plant-state', plantState];
  const device = parts.begin(() =>
    startChild('device', deviceModule, arguments_, (line) => (line === 'device ready' ? line : undefined)),
  );
  const ended = Promise.race([controller.ended, device.ended]);
  return { ok: true, loop: { brokerUrl, ended } };
}

function credentialArguments({ broker }: Play['site']): string[] {
  const { username, passwordFile } = broker ?? {};
  if (username === undefined || passwordFile === undefined) return [];
  return ['--username', username, '--password-file', passwordFile];
}

/** The broker's address in the line that a controller prints once it runs. */
function brokerOf(line: string): string | undefined {
  return /^controller ready: broker (mqtts?:\/\/\S+) site \S+$/.exec(line)?.[1];
}
