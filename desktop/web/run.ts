import { fileURLToPath } from 'node:url';
import { createHost, type HostOptions } from '../host/host.ts';
import { exitCodes } from '../host/new-command.ts';
import { stopAsked } from '../host/stop-asked.ts';
import { serveMonitor, type WebOptions } from './server.ts';
import { readTokens } from './token-file.ts';

/** Folder of the built page. */
export const pageFolder = fileURLToPath(new URL('../../dist/web', import.meta.url));

/** Where the page is served, and to whom. */
export interface WebPlace extends Pick<WebOptions, 'host' | 'port' | 'alsoCalled'> {
  readonly tokenFile?: string | undefined;
  /** Makes the token file where there is none. */
  readonly makeTokenFile?: boolean | undefined;
}

/**
 * Runs a monitor for browsers until it is told to stop (Ctrl-C or a signal).
 * @returns the exit code.
 */
export async function runWebMonitor(options: HostOptions, place: WebPlace): Promise<number> {
  const { tokenFile, makeTokenFile = false, ...where } = place;
  const read = tokenFile === undefined ? undefined : readTokens(tokenFile, makeTokenFile);
  if (read?.ok === false) return failed(read.reason);
  const monitor = createHost(options);
  const start = await serveMonitor({ api: monitor, pageFolder, tokens: read?.tokens, ...where });
  if (!start.ok) {
    await monitor.close();
    return failed(start.reason);
  }
  console.log(`monitor: ${start.server.url}`);
  if (tokenFile !== undefined) console.log(signInWords(tokenFile));
  await stopAsked();
  await Promise.all([start.server.close(), monitor.close()]);
  return exitCodes.stopped;
}

function failed(reason: string): number {
  console.error(`monitor: ${reason}`);
  return exitCodes.failed;
}

const signInWords = (tokenFile: string) =>
  `Sign in with a token of ${tokenFile}. The page travels unencrypted: use it only in a network that you trust, or behind a server that encrypts.`;
