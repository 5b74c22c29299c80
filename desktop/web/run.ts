import { fileURLToPath } from 'node:url';
import { createHost, type HostOptions } from '../host/host.ts';
import { exitCodes } from '../host/new-command.ts';
import { stopAsked } from '../host/stop-asked.ts';
import { serveMonitor } from './server.ts';

/** Folder of the built page. */
export const pageFolder = fileURLToPath(new URL('../../dist/web', import.meta.url));

/**
 * Runs a monitor for browsers until it is told to stop (Ctrl-C or a signal).
 * @returns the exit code.
 */
export async function runWebMonitor(options: HostOptions, host: string, port: number): Promise<number> {
  const monitor = createHost(options);
  const start = await serveMonitor({ api: monitor, pageFolder, host, port });
  if (!start.ok) {
    await monitor.close();
    console.error(`monitor: ${start.reason}`);
    return exitCodes.failed;
  }
  console.log(`monitor: ${start.server.url}`);
  await stopAsked();
  await Promise.all([start.server.close(), monitor.close()]);
  return exitCodes.stopped;
}
