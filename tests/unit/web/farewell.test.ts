import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import { type AddressInfo, connect, type Socket } from 'node:net';
import { Duplex } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createGate } from '../../../desktop/web/gate.ts';
import { attachDoor, farewellMs } from '../../../desktop/web/socket.ts';
import type { MonitorApi } from '../../../shared-types/monitor-api.ts';

const api: MonitorApi = {
  call: () => new Promise<never>(() => undefined),
  listen: () => () => undefined,
};
let server: Server;
let door: ReturnType<typeof attachDoor>;
let client: Socket;
/** The server's side of it. */
let served: Duplex;

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  server = createServer();
  door = attachDoor(server, api, createGate(undefined), () => true);
  server.on('upgrade', (_request, stream) => {
    served = stream;
  });
  await once(server.listen(0, '127.0.0.1'), 'listening');
});
afterEach(async () => {
  client?.destroy();
  vi.useRealTimers();
  if (server.listening) await new Promise((resolve) => server.close(resolve));
});

/** Asks for a WebSocket at a path, and never ends its own side. @returns the head of the answer. */
async function upgrade(path: string): Promise<string> {
  const { port } = server.address() as AddressInfo;
  client = connect({ port, host: '127.0.0.1', allowHalfOpen: true });
  client.on('error', () => undefined);
  client.write(
    `GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n` +
      'Sec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n',
  );
  const [head] = await once(client, 'data');
  return String(head);
}

describe('a client that never ends its side', () => {
  it('is gone as soon as it is refused', async () => {
    expect(await upgrade('/elsewhere')).toContain('404 Not Found');
    // Without waiting: the clock stands.
    if (!served.destroyed) await once(served, 'close');
  });

  it('does not keep a monitor from stopping', async () => {
    expect(await upgrade('/monitor')).toContain('101 Switching Protocols');
    door.close();
    const closed = new Promise((resolve) => server.close(resolve));
    vi.advanceTimersByTime(farewellMs - 1);
    expect(served.destroyed).toBe(false);
    vi.advanceTimersByTime(1);
    await closed;
  });
});

it('a client that never reads its refusal is gone after a moment', () => {
  const stuck = new Duplex({ read: () => undefined, write: () => undefined });
  const request = { url: '/elsewhere', headers: {}, socket: {} };
  server.emit('upgrade', request, stuck, Buffer.alloc(0));
  vi.advanceTimersByTime(farewellMs - 1);
  expect(stuck.destroyed).toBe(false);
  vi.advanceTimersByTime(1);
  expect(stuck.destroyed).toBe(true);
});
