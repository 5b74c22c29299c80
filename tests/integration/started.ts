import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { vi } from 'vitest';
import { WebSocket } from 'ws';
import type { MonitorMethod, MonitorParams, MonitorReply } from '../../shared-types/monitor-api.ts';

const module = fileURLToPath(new URL('../../desktop/start.ts', import.meta.url));
const patience = { timeout: 60_000, interval: 50 };

/** The start command as a process group of its own, so that nothing it started can go unseen. */
export interface Started {
  readonly pid: number;
  readonly printed: string[];
  readonly complained: string[];
  /** Address of the page, once it is told. */
  url(): Promise<string>;
  /** @returns how it ended: a code or a signal. */
  ended(): Promise<number | string>;
  signal(name: NodeJS.Signals): void;
  /** Process of one of its children, by a part of its command line. */
  childPid(part: string): number | undefined;
  /** Resolves once no process of the group is left. */
  gone(): Promise<void>;
}

export function startAll(args: readonly string[]): Started {
  const child = spawn(process.execPath, [module, ...args], {
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const pid = child.pid ?? 0;
  const printed = lines(child, 'stdout');
  const exit = once(child, 'close') as Promise<[number | null, string | null]>;
  const addressOf = () => printed.find((line) => line.startsWith('monitor: '))?.slice('monitor: '.length);
  return {
    pid,
    printed,
    complained: lines(child, 'stderr'),
    url: () =>
      vi.waitFor(() => {
        const url = addressOf();
        if (url === undefined) throw new Error(`no address in ${printed.join('\n')}`);
        return url;
      }, patience),
    ended: async () => {
      const [code, signal] = await exit;
      return code ?? signal ?? 'nothing';
    },
    signal: (name) => child.kill(name),
    childPid: (part) => childrenOf(pid).find((known) => commandOf(known).includes(part)),
    gone: () =>
      vi.waitFor(() => {
        if (groupLives(pid)) throw new Error('a process is left');
      }, patience),
  };
}

function lines(child: ChildProcess, stream: 'stdout' | 'stderr'): string[] {
  const all: string[] = [];
  let rest = '';
  child[stream]?.setEncoding('utf8').on('data', (text: string) => {
    const pieces = (rest + text).split('\n');
    rest = pieces.pop() ?? '';
    all.push(...pieces);
  });
  return all;
}

function groupLives(group: number): boolean {
  try {
    return process.kill(-group, 0);
  } catch {
    return false;
  }
}

function childrenOf(parent: number): number[] {
  const numbers = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  return numbers.map(Number).filter((pid) => parentOf(pid) === parent);
}

/** Reads a file of /proc, whose process may be gone by now. */
function proc(pid: number, file: string): string {
  try {
    return readFileSync(`/proc/${pid}/${file}`, 'utf8');
  } catch {
    return '';
  }
}

const parentOf = (pid: number) => Number(/^PPid:\s*(\d+)$/m.exec(proc(pid, 'status'))?.[1]);
const commandOf = (pid: number) => proc(pid, 'cmdline').replaceAll('\0', ' ');

/** The door of a served monitor, as its page goes through it. */
export async function openDoor(url: string) {
  const socket = new WebSocket(`${url.replace('http', 'ws')}monitor`, { origin: url.slice(0, -1) });
  await once(socket, 'open');
  const waiting = new Map<number, (reply: never) => void>();
  let lastId = 0;
  socket.on('message', (data) => {
    const { id, ...reply } = JSON.parse(data.toString());
    waiting.get(id)?.(reply as never);
  });
  return {
    call<M extends MonitorMethod>(method: M, params: MonitorParams<M>): Promise<MonitorReply<M>> {
      const id = ++lastId;
      socket.send(JSON.stringify({ id, method, params }));
      return new Promise((resolve) => waiting.set(id, resolve));
    },
    close: () => socket.terminate(),
  };
}
