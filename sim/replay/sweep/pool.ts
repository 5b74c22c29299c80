import { Worker } from 'node:worker_threads';
import type { Answer, WorkerTask } from './messages.ts';
import type { Queue } from './queue.ts';

export interface PoolOptions {
  readonly queue: Queue;
  readonly workers: number;
  readonly task: WorkerTask;
  /** Module that each worker runs. */
  readonly module: URL | string;
  readonly hear: (answer: Answer) => void;
  readonly signal: AbortSignal | undefined;
}

/**
 * Has the queue worked off by several threads. Resolves when all is done, or at once when the signal says so.
 *
 * @throws Error when a thread fails; the others are ended.
 */
export async function workOff({ queue, workers, task, module, hear, signal }: PoolOptions): Promise<void> {
  const threads: Worker[] = [];
  const run = () =>
    new Promise<void>((resolve, reject) => {
      let day: number | undefined;
      const thread = new Worker(module, { workerData: task });
      threads.push(thread);
      const goOn = () => {
        const unit = signal?.aborted === true ? undefined : queue.next(day);
        if (unit === undefined) return resolve();
        day = unit.day;
        thread.postMessage(unit);
      };
      thread.on('message', (answer: Answer) => {
        if (signal?.aborted === true) return;
        hear(answer);
        if (answer.kind === 'day' && answer.why !== null) queue.drop(answer.day);
        if (answer.kind === 'done') goOn();
      });
      thread.on('error', reject);
      signal?.addEventListener('abort', () => resolve(), { once: true });
      goOn();
    });
  try {
    await Promise.all(Array.from({ length: workers }, run));
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
}
