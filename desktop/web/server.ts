import { existsSync } from 'node:fs';
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { hostname } from 'node:os';
import { join } from 'node:path';
import sirv from 'sirv';
import type { MonitorApi } from '../../shared-types/monitor-api.ts';
import { pageHeaders } from '../host/page-policy.ts';
import { wordsOf } from '../host/replies.ts';
import { answerAccess } from './access-routes.ts';
import { createDoorman, type Doorman, isLoopbackHost, plain } from './doorman.ts';
import { createGate, type Gate } from './gate.ts';
import { attachDoor } from './socket.ts';
import type { Tokens } from './tokens.ts';

export interface WebServer {
  /** Where a browser finds the monitor. */
  readonly url: string;
  close(): Promise<void>;
}

export interface WebOptions {
  readonly api: MonitorApi;
  /** Folder of the built page. */
  readonly pageFolder: string;
  /** Address to listen at; any but those of the loopback interface wants tokens. */
  readonly host: string;
  /** 0: any free port. */
  readonly port: number;
  /** Names, besides the machine's own, under which browsers of other machines come, by a proxy perhaps; want tokens. */
  readonly alsoCalled?: readonly string[];
  /** With tokens, everybody signs in first. */
  readonly tokens?: Tokens | undefined;
}

/** Times in which a request's head and the whole of it have to arrive [ms]: design choices. */
const headTimeoutMs = 10_000;
const requestTimeoutMs = 15_000;

export type WebStart =
  | { readonly ok: true; readonly server: WebServer }
  | { readonly ok: false; readonly reason: string };

/** Serves screens and host to browsers: on this machine alone, or to whoever has a token. */
export async function serveMonitor(options: WebOptions): Promise<WebStart> {
  const { api, pageFolder, host, port, alsoCalled = [], tokens } = options;
  if (!isLoopbackHost(host) && tokens === undefined)
    return refused(`the address ${host} is open to other machines; give a token file with --token-file`);
  if (alsoCalled.length > 0 && tokens === undefined)
    return refused(
      'further names of this machine open the page to others; give a token file with --token-file',
    );
  if (!existsSync(join(pageFolder, 'index.html')))
    return refused('the page is not built yet; run: npm run build');
  const gate = createGate(tokens);
  const knows = createDoorman(host, alsoCalled);
  const server = createServer(
    { headersTimeout: headTimeoutMs, requestTimeout: requestTimeoutMs },
    pageListener(pageFolder, gate, knows),
  );
  const fault = await listen(server, host, port);
  if (fault !== undefined) return refused(fault);
  const door = attachDoor(server, api, gate, knows);
  return {
    ok: true,
    server: {
      url: addressOf(server),
      close() {
        door.close();
        return closed(server);
      },
    },
  };
}

const refused = (reason: string): WebStart => ({ ok: false, reason });

function pageListener(pageFolder: string, gate: Gate, knows: Doorman): RequestListener {
  // Looks files up anew for each request: the page may be built again under a running monitor.
  const serve = sirv(pageFolder, { dev: true, etag: true });
  return (request, response) => {
    for (const [name, value] of Object.entries(pageHeaders)) response.setHeader(name, value);
    if (!knows(request)) response.writeHead(421).end();
    else if (answerAccess(request, response, gate)) return;
    else if (request.method !== 'GET' && request.method !== 'HEAD')
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    else
      serve(request, response, () => {
        response.writeHead(404).end();
      });
  };
}

/** @returns why the address cannot be had, or undefined when the server listens. */
async function listen(server: Server, host: string, port: number): Promise<string | undefined> {
  const { promise, resolve } = Promise.withResolvers<string | undefined>();
  server.once('error', (thrown: NodeJS.ErrnoException) => {
    resolve(
      thrown.code === 'EADDRINUSE' ? `port ${port} is taken; choose another with --port` : wordsOf(thrown),
    );
  });
  server.listen({ host, port }, () => resolve(undefined));
  return promise;
}

function addressOf(server: Server): string {
  const { address, family, port } = server.address() as AddressInfo;
  if (address === '::' || address === '0.0.0.0') return `http://${hostname()}:${port}/`;
  return `http://${family === 'IPv6' ? `[${address}]` : plain(address)}:${port}/`;
}

function closed(server: Server): Promise<void> {
  const { promise, resolve } = Promise.withResolvers<void>();
  server.close(() => resolve());
  server.closeAllConnections();
  return promise;
}
