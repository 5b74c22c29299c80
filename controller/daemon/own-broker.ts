import { isIPv4 } from 'node:net';
import type { Site } from '../../shared-types/site.ts';
import type { RunningBroker } from '../links/broker.ts';
import type { BrokerCredentials } from '../links/open-link.ts';
import type { Notes } from './notes.ts';

interface OwnBrokerOptions {
  readonly site: Site;
  readonly clientCredentials?: BrokerCredentials;
  readonly say: (line: string) => void;
}

/**
 * Starts the broker that the site file asks for, and says so where it lets anybody in.
 *
 * @throws BrokerStartError when it cannot listen.
 */
export async function startOwnBroker(
  { site, clientCredentials, say }: OwnBrokerOptions,
  notes: Notes,
): Promise<RunningBroker | undefined> {
  if (site.broker === undefined) return undefined;
  const { host, port } = site.broker;
  // Its library takes some fifteen megabytes, which a site with a broker of its own need not spend.
  const { startBroker } = await import('../links/broker.ts');
  const broker = await startBroker({
    host,
    port,
    site,
    report: ({ text }) => notes.note('message-ignored', text),
    ...(clientCredentials === undefined ? {} : { clientCredentials }),
  });
  if (clientCredentials === undefined && !isLoopbackHost(host)) say(openToAll(host));
  return broker;
}

/** True where only programs of this machine can connect: 127.0.0.0/8 (RFC 1122, 3.2.1.3), ::1 (RFC 4291, 2.5.3). */
export const isLoopbackHost = (host: string): boolean =>
  host === 'localhost' || host === '::1' || (isIPv4(host) && host.startsWith('127.'));

const openToAll = (host: string) =>
  `caution: the broker at ${host} lets in anybody who reaches its port: they may run the pump, change settings and ` +
  'send readings of their own. Give the broker section of the site file a username and a passwordFile';
