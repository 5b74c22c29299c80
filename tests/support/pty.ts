import { existsSync } from 'node:fs';
import { needProgram } from './find-program.ts';
import { type Program, startProgram } from './process.ts';
import { temporaryFolder } from './temporary.ts';
import { until } from './wait.ts';

/** A serial line made of two pseudo terminals: what one end writes, the other reads. */
export interface SerialLine {
  readonly devicePath: string;
  readonly controllerPath: string;
  /** Pulls the plug: both ends vanish, whoever had one open loses it. */
  unplug(): Promise<void>;
  /** Plugs it in again, at the same paths. */
  replug(): Promise<void>;
  remove(): Promise<void>;
}

export async function openSerialLine(): Promise<SerialLine> {
  const folder = temporaryFolder('serial');
  const devicePath = folder.file('device');
  const controllerPath = folder.file('controller');
  let program: Program | undefined;
  const plug = async () => {
    const ends = [devicePath, controllerPath].map((path) => `pty,raw,echo=0,link=${path}`);
    const begun = startProgram(needProgram('socat'), ends);
    program = begun;
    await until('both ends of the serial line', () => {
      if (begun.hasEnded()) throw new Error(`socat did not start:\n${begun.output()}`);
      return existsSync(devicePath) && existsSync(controllerPath);
    });
  };
  const unplug = async () => {
    if (program !== undefined && !program.hasEnded()) await program.stop('SIGTERM');
    await until('the ends to vanish', () => !existsSync(devicePath) && !existsSync(controllerPath));
  };
  await plug();
  return {
    devicePath,
    controllerPath,
    unplug,
    replug: plug,
    remove: async () => {
      await unplug();
      folder.remove();
    },
  };
}
