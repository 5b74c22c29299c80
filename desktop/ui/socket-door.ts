import type { Access } from '../../shared-types/monitor-access.ts';
import {
  type MonitorEvent,
  type MonitorMethod,
  type MonitorReply,
  type MonitorWire,
  monitorMethods,
  monitorWireSchema,
} from '../../shared-types/monitor-api.ts';
import type { Door, DoorState } from './door.ts';
import { doorText } from './text/door.ts';
import { bannerText } from './text/shell.ts';

/** What of a WebSocket is used; a test hands in its own. */
export interface Socket {
  send(text: string): void;
  close(): void;
  addEventListener(kind: 'open' | 'close', listener: () => void): void;
  addEventListener(kind: 'message', listener: (event: { data: unknown }) => void): void;
}

interface SocketDoorOptions {
  readonly connect: () => Socket;
  /** Asks before each attempt what this page may do; undefined: no answer. Without it, everybody may enter. */
  readonly access?: () => Promise<Access | undefined>;
  /** Longest wait for a reply [ms]. */
  readonly replyTimeoutMs?: number;
  /** Wait before the first new attempt; it doubles up to `longestPauseMs` [ms]. */
  readonly firstPauseMs?: number;
  readonly longestPauseMs?: number;
}

type Reply = MonitorReply<MonitorMethod>;
interface Waiting {
  readonly method: MonitorMethod;
  readonly settle: (reply: Reply) => void;
}

const refused = (text: string, tip?: string): Reply => ({
  ok: false,
  problem: { severity: 'error', text, ...(tip === undefined ? {} : { tip }) },
});

/** A door that can be told to try again at once, after somebody signed in. */
export interface SocketDoor extends Door {
  knockAgain(): void;
}

/** A door over a WebSocket: it reconnects by itself; a call while it is down fails at once, in words. */
export function openSocketDoor(options: SocketDoorOptions): SocketDoor {
  const { connect, access, replyTimeoutMs = 70_000, firstPauseMs = 500, longestPauseMs = 10_000 } = options;
  const listeners = new Set<(event: MonitorEvent) => void>();
  const watchers = new Set<(state: DoorState) => void>();
  const waiting = new Map<number, Waiting>();
  let state: DoorState = 'connecting';
  let pauseMs = firstPauseMs;
  let lastId = 0;
  let socket: Socket | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let closed = false;

  function become(next: DoorState): void {
    if (next === state) return;
    state = next;
    for (const watcher of watchers) watcher(next);
  }

  function tryLater(): void {
    become('down');
    if (closed) return;
    timer = setTimeout(knock, pauseMs);
    pauseMs = Math.min(longestPauseMs, pauseMs * 2);
  }

  function knock(): void {
    if (access === undefined) open();
    else void access().then((answer) => enter(answer?.may));
  }

  function enter(may: Access['may'] | undefined): void {
    if (closed) return;
    if (may === undefined) tryLater();
    else if (may === 'nothing') become('shut');
    else open();
  }

  function open(): void {
    const attempt = connect();
    socket = attempt;
    attempt.addEventListener('open', () => {
      pauseMs = firstPauseMs;
      become('open');
    });
    attempt.addEventListener('message', ({ data }) => hear(data));
    attempt.addEventListener('close', () => {
      for (const { settle } of [...waiting.values()]) settle(refused(doorText.lostMeanwhile));
      tryLater();
    });
  }

  function hear(data: unknown): void {
    const wire = parseWire(data);
    if (wire === undefined) return;
    if ('event' in wire) for (const listener of listeners) listener(wire.event);
    else waiting.get(wire.id)?.settle(replyOf(wire, waiting.get(wire.id)?.method));
  }

  function call<M extends MonitorMethod>(method: M, params: unknown): Promise<MonitorReply<M>> {
    if (state !== 'open' || socket === undefined)
      return Promise.resolve(refused(bannerText.doorDown, bannerText.doorDownTip) as MonitorReply<M>);
    const { promise, resolve } = Promise.withResolvers<Reply>();
    const id = ++lastId;
    const end = setTimeout(() => settle(refused(doorText.noReply)), replyTimeoutMs);
    const settle = (reply: Reply) => {
      clearTimeout(end);
      waiting.delete(id);
      resolve(reply);
    };
    waiting.set(id, { method, settle });
    socket.send(JSON.stringify({ id, method, params }));
    return promise as Promise<MonitorReply<M>>;
  }

  knock();
  return {
    call,
    listen: (listener) => subscribed(listeners, listener),
    state: () => state,
    watch: (watcher) => subscribed(watchers, watcher),
    knockAgain() {
      clearTimeout(timer);
      pauseMs = firstPauseMs;
      if (state !== 'open') knock();
    },
    close() {
      closed = true;
      clearTimeout(timer);
      socket?.close();
    },
  };
}

function subscribed<Listener>(all: Set<Listener>, one: Listener): () => void {
  all.add(one);
  return () => all.delete(one);
}

function parseWire(data: unknown): MonitorWire | undefined {
  try {
    return monitorWireSchema.safeParse(JSON.parse(String(data))).data;
  } catch {
    return undefined;
  }
}

/** The reply of a wire, its result held against what the method promises. */
function replyOf(wire: Exclude<MonitorWire, { event: unknown }>, method: MonitorMethod | undefined): Reply {
  if (!wire.ok) return { ok: false, problem: wire.problem };
  const result = method === undefined ? undefined : monitorMethods[method].result.safeParse(wire.result);
  return result?.success === true
    ? ({ ok: true, result: result.data } as Reply)
    : refused(doorText.notUnderstood);
}
