import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { until } from './wait.ts';

const projectRoot = fileURLToPath(new URL('../..', import.meta.url));

interface Ending {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
}

/** A program that a test runs, with all that it said. */
export interface Program {
  readonly pid: number;
  readonly child: ChildProcess;
  /** All that it wrote so far, both streams in the order of arrival. */
  output(): string;
  /** Waits for a line that matches; rejects when the program ends or the deadline passes before. */
  line(pattern: RegExp, deadlineMs?: number): Promise<RegExpMatchArray>;
  readonly ended: Promise<Ending>;
  hasEnded(): boolean;
  /** Sends the signal and waits for the end; after the deadline it kills and rejects. */
  stop(signal?: NodeJS.Signals, deadlineMs?: number): Promise<Ending>;
}

/** Programs of this test process, so that none outlives it. */
const running = new Set<ChildProcess>();
process.once('exit', () => {
  for (const child of running) child.kill('SIGKILL');
});

/** Runs a program; `stdio` may add an IPC channel. */
export function startProgram(command: string, args: readonly string[], options: SpawnOptions = {}): Program {
  const child = spawn(command, args, { cwd: projectRoot, stdio: ['ignore', 'pipe', 'pipe'], ...options });
  running.add(child);
  let said = '';
  let ending: Ending | undefined;
  const collect = (chunk: Buffer) => {
    said += chunk.toString();
  };
  child.stdout?.on('data', collect);
  child.stderr?.on('data', collect);
  const ended = new Promise<Ending>((resolve) => {
    const finish = (end: Ending) => {
      running.delete(child);
      ending = end;
      resolve(end);
    };
    child.once('error', (error) => {
      said += `${error.message}\n`;
      finish({ code: null, signal: null });
    });
    child.once('close', (code, signal) => finish({ code, signal }));
  });

  const line = (pattern: RegExp, deadlineMs = 30_000): Promise<RegExpMatchArray> =>
    until(
      `the line ${pattern} of ${command} ${args.join(' ')}, which said:\n${said}`,
      () => {
        const found = said.split(/\r?\n/).map((text) => text.match(pattern));
        const match = found.find((one) => one !== null);
        if (match === undefined && ending !== undefined)
          throw new Error(`${command} ${args.join(' ')} ended without the line ${pattern}:\n${said}`);
        return match;
      },
      deadlineMs,
    );

  const stop = async (signal: NodeJS.Signals = 'SIGTERM', deadlineMs = 15_000): Promise<Ending> => {
    child.kill(signal);
    try {
      return await until(`the end of ${command} ${args.join(' ')}`, () => ending, deadlineMs);
    } catch (error) {
      child.kill('SIGKILL');
      throw error;
    }
  };
  return {
    pid: child.pid ?? -1,
    child,
    output: () => said,
    line,
    ended,
    hasEnded: () => ending !== undefined,
    stop,
  };
}

/** Runs a TypeScript file of the project, path from its root, in the Node that runs the tests. */
export function startNode(file: string, args: readonly string[] = [], options: SpawnOptions = {}): Program {
  return startProgram(process.execPath, [file, ...args], options);
}
