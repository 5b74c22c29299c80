import { existsSync } from 'node:fs';
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import sirv from 'sirv';
import type { MonitorApi } from '../../shared-types/monitor-api.ts';
import { pageHeaders } from '../host/page-policy.ts';
import { wordsOf } from '../host/replies.ts';
import { isLoopbackHost, speaksToLoopback } from './doorman.ts';
import { attachDoor } from './socket.ts';

export interface WebServer {
  /** Where a browser on this machine finds the monitor. */
  readonly url: string;
  close(): Promise<void>;
}

export interface WebOptions {
  readonly api: MonitorApi;
  /** Folder of the built page. */
  readonly pageFolder: string;
  readonly host: string;
  /** 0: any free port. */
  readonly port: number;
}

export type WebStart =
  | { readonly ok: true; readonly server: WebServer }
  | { readonly ok: false; readonly reason: string };

/** Serves screens and host to browsers on this machine. */
export async function serveMonitor({ api, pageFolder, host, port }: WebOptions): Promise<WebStart> {
  if (!isLoopbackHost(host))
    return refused(
      `the address ${host} is open to other machines, and the monitor asks nobody who they are; use 127.0.0.1`,
    );
  if (!existsSync(join(pageFolder, 'index.html')))
    return refused('the page is not built yet; run: npm run build');
  const server = createServer(pageListener(pageFolder));
  const fault = await listen(server, host, port);
  if (fault !== undefined) return refused(fault);
  const door = attachDoor(server, api);
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

function pageListener(pageFolder: string): RequestListener {
  // Looks files up anew for each request: the page may be built again under a running monitor.
  const serve = sirv(pageFolder, { dev: true, etag: true });
  return (request, response) => {
    for (const [name, value] of Object.entries(pageHeaders)) response.setHeader(name, value);
    if (!speaksToLoopback(request.headers)) response.writeHead(421).end();
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
  return `http://${family === 'IPv6' ? `[${address}]` : address}:${port}/`;
}

function closed(server: Server): Promise<void> {
  const { promise, resolve } = Promise.withResolvers<void>();
  server.close(() => resolve());
  server.closeAllConnections();
  return promise;
}
