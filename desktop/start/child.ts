import { type ChildProcess, fork } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';

/** A process of this start. It dies with its parent, since it watches the channel between them. */
export interface Child {
  /** What `ready` found in its output, or undefined when it ended before. */
  readonly ready: Promise<string | undefined>;
  /** How it ended, in words. */
  readonly ended: Promise<string>;
  /** Asks it to end, and waits until it has. */
  stop(): Promise<void>;
  /** Ends it at once. */
  kill(): void;
}

/**
 * @param ready - Given each line that it prints; what it returns other than undefined says that it runs.
 */
export function startChild(
  name: string,
  module: URL,
  args: readonly string[],
  ready: (line: string) => string | undefined,
): Child {
  const child = fork(fileURLToPath(module), args, {
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    // They leave little garbage; a small young generation spares memory, as in `npm run controller`.
    execArgv: ['--max-semi-space-size=2'],
  });
  const found = Promise.withResolvers<string | undefined>();
  const ended = Promise.withResolvers<string>();
  child.on('close', (code, signal) => {
    ended.resolve(`the ${name} ended with ${signal === null ? `code ${code}` : signal}`);
    found.resolve(undefined);
  });
  child.on('error', ({ message }) => ended.resolve(`the ${name} failed: ${message}`));
  eachLine(child.stdout, (line) => {
    const word = ready(line);
    if (word === undefined) console.log(named(name, line));
    else found.resolve(word);
  });
  eachLine(child.stderr, (line) => console.error(named(name, line)));
  return {
    ready: found.promise,
    ended: ended.promise,
    async stop() {
      askToEnd(child);
      await ended.promise;
    },
    kill: () => child.kill('SIGKILL'),
  };
}

/** Where signals are not, the channel between both processes is closed instead. */
function askToEnd(child: ChildProcess): void {
  if (process.platform !== 'win32') child.kill('SIGTERM');
  else if (child.connected) child.disconnect();
}

/** A line under the name of the child that printed it. */
const named = (name: string, line: string) => (line.startsWith(`${name}: `) ? line : `${name}: ${line}`);

function eachLine(stream: Readable | null, use: (line: string) => void): void {
  if (stream !== null) createInterface({ input: stream }).on('line', use);
}
