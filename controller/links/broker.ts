import { randomBytes } from 'node:crypto';
import { createServer, type Server, type Socket } from 'node:net';
import { Aedes } from 'aedes';
import type { Site } from '../../shared-types/site.ts';
import { brokerAccess } from './broker-access.ts';
import { brokerStartError } from './broker-start-error.ts';
import type { LinkReport } from './link.ts';
import type { BrokerCredentials } from './open-link.ts';
import { createPacketGuard } from './packet-guard.ts';

const mostConnections = 64;
const mostPacketBytes = 262_144;
const mostTopicLevels = 16;

export interface BrokerOptions {
  readonly host: string;
  /** 0: any free port. */
  readonly port: number;
  readonly site: Site;
  /** What all others than the controller have to give; without it anybody is let in. */
  readonly clientCredentials?: BrokerCredentials;
  /** Told once a cause about what was refused. */
  readonly report?: (report: LinkReport) => void;
}

export interface RunningBroker {
  /** Where clients of this machine reach it. */
  readonly url: string;
  /** Made anew at each start, kept in memory only. */
  readonly controllerCredentials: BrokerCredentials;
  close(): Promise<void>;
}

/**
 * Runs an MQTT 3.1.1 broker inside this process.
 *
 * A publication that the rules refuse is acknowledged and goes nowhere: MQTT 3.1.1 knows no other
 * answer than that or cutting the connection (section 3.3.5), and a mistaken client that is cut off
 * would come back and lose its readings for nothing.
 *
 * @throws BrokerStartError when it cannot listen.
 */
export async function startBroker(options: BrokerOptions): Promise<RunningBroker> {
  const credentials = { username: 'flatwater-controller', password: randomBytes(24).toString('base64url') };
  const aedes = await Aedes.createBroker({
    maxTopicLevels: mostTopicLevels,
    maxClientsIdLength: 64,
    connectTimeout: 10_000,
    drainTimeout: 20_000,
    ...brokerAccess(
      options.site,
      { controller: credentials, client: options.clientCredentials },
      options.report ?? (() => undefined),
    ),
  });
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
    guardSize(socket);
    aedes.handle(socket);
  });
  server.maxConnections = mostConnections;
  try {
    await listen(server, options);
  } catch (error) {
    await new Promise<void>((resolve) => aedes.close(resolve));
    throw error;
  }
  return {
    url: reachableUrl(server, options.host),
    controllerCredentials: credentials,
    close: async () => {
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      await new Promise<void>((resolve) => aedes.close(resolve));
      for (const socket of sockets) socket.destroy();
      await closed;
    },
  };
}

/** Cuts a connection that announces a packet which nobody here needs; `data` comes with each read of the broker. */
function guardSize(socket: Socket): void {
  const isGood = createPacketGuard(mostPacketBytes);
  socket.on('data', (bytes: Buffer) => {
    if (!isGood(bytes)) socket.destroy();
  });
  // Without a listener of its own it would flow; the broker reads when it is ready.
  socket.pause();
}

function listen(server: Server, { host, port }: BrokerOptions): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(brokerStartError(error, host, port)));
    server.listen(port, host, () => {
      // From now on an error is one of a single connection, which ends by itself.
      server.removeAllListeners('error');
      server.on('error', () => undefined);
      resolve();
    });
  });
}

/** A broker that listens everywhere is reached from this machine over the loopback. */
function reachableUrl(server: Server, host: string): string {
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  if (host === '0.0.0.0' || host === '') return `mqtt://127.0.0.1:${port}`;
  if (host === '::') return `mqtt://[::1]:${port}`;
  return host.includes(':') ? `mqtt://[${host}]:${port}` : `mqtt://${host}:${port}`;
}
