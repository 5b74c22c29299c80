import type { Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { RateLimiterMemory } from 'rate-limiter-flexible';
import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import type { MonitorApi } from '../../shared-types/monitor-api.ts';
import { answerText } from '../host/wire.ts';
import { comesFromOwnPage, type Doorman } from './doorman.ts';
import type { Gate, Visitor } from './gate.ts';
import { lookOnlyApi } from './look-only.ts';
import { createOutbox } from './outbox.ts';

/** Limits of one door. All are design choices. */
const mostMessageBytes = 65_536;
const mostClients = 50;
const mostOpenCalls = 64;
/** Calls of one client within the time, and that time [s]: far more than a person makes. */
export const mostCalls = 300;
const callSpanS = 10;
const pingEveryMs = 15_000;
/** How long somebody who is sent away has to hear of it [ms]. */
export const farewellMs = 1000;

const doorPath = '/monitor';

/** Opens the door between browsers and the host at `/monitor`: calls in, replies and events out. */
export function attachDoor(server: Server, api: MonitorApi, gate: Gate, knows: Doorman): { close(): void } {
  const door = new WebSocketServer({
    noServer: true,
    maxPayload: mostMessageBytes,
    perMessageDeflate: false,
  });
  // The server itself forgets a connection that was upgraded, and one whose upgrade was refused.
  const streams = new Set<Duplex>();
  server.on('upgrade', (request, stream, head) => {
    streams.add(stream);
    stream.once('close', () => streams.delete(stream));
    const path = URL.parse(request.url ?? '', 'http://localhost')?.pathname;
    const visitor = gate.visitor(request);
    if (!knows(request)) refuse(stream, '421 Misdirected Request');
    else if (path !== doorPath) refuse(stream, '404 Not Found');
    else if (!comesFromOwnPage(request.headers)) refuse(stream, '403 Forbidden');
    else if (visitor === undefined) refuse(stream, '401 Unauthorized');
    else if (door.clients.size >= mostClients) refuse(stream, '503 Service Unavailable');
    else door.handleUpgrade(request, stream, head, (socket) => admit(socket, api, visitor));
  });
  return {
    close() {
      for (const socket of door.clients) socket.close(1001, 'the monitor stops');
      door.close();
      const late = setTimeout(() => {
        for (const stream of streams) stream.destroy();
      }, farewellMs);
      server.once('close', () => clearTimeout(late));
    },
  };
}

function refuse(stream: Duplex, status: string): void {
  stream.on('error', () => stream.destroy());
  // The other end may never end its side, nor even read what it is told.
  stream.once('finish', () => stream.destroy());
  const late = setTimeout(() => stream.destroy(), farewellMs);
  stream.once('close', () => clearTimeout(late));
  stream.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

function admit(socket: WebSocket, whole: MonitorApi, { may, ended }: Visitor): void {
  const api = may === 'ask' ? whole : lookOnlyApi(whole);
  const rate = new RateLimiterMemory({ points: mostCalls, duration: callSpanS });
  const outbox = createOutbox({
    get bufferedAmount() {
      return socket.bufferedAmount;
    },
    send: (text, sent) => socket.send(text, sent),
  });
  let openCalls = 0;

  async function answer(data: RawData): Promise<void> {
    openCalls++;
    const inTime = await rate.consume('calls').then(
      () => true,
      () => false,
    );
    if (!inTime) return socket.close(1008, 'too many calls');
    const wire = await answerText(api, data.toString());
    // A call stays open until its reply has left, so that a client that never reads cannot pile them up.
    return outbox.reply(wire, () => openCalls--);
  }

  socket.on('message', (data, isBinary) => {
    // Whoever has to leave may still send for a while; nothing of it is heard.
    if (socket.readyState !== socket.OPEN) return;
    if (isBinary) socket.close(1003, 'text only');
    else if (openCalls >= mostOpenCalls) socket.close(1008, 'too many calls at a time');
    else void answer(data);
  });
  socket.on('error', () => socket.terminate());
  const stopListening = api.listen(outbox.event);
  const stopPinging = watchPulse(socket);
  const leave = () => socket.close(1008, 'signed out');
  ended?.addEventListener('abort', leave, { once: true });
  socket.on('close', () => {
    stopListening();
    stopPinging();
    ended?.removeEventListener('abort', leave);
  });
}

/** Ends a connection whose other end is gone without a word. */
function watchPulse(socket: WebSocket): () => void {
  let alive = true;
  socket.on('pong', () => {
    alive = true;
  });
  const timer = setInterval(() => {
    if (!alive) return socket.terminate();
    alive = false;
    return socket.ping();
  }, pingEveryMs);
  timer.unref();
  return () => clearInterval(timer);
}
