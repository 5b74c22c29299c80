import { Worker } from 'node:worker_threads';

/** Threads that each answer one question with one message and end. */
export interface Threads {
  /**
   * @param late - What is answered in place of a thread that still runs `patienceMs` after nobody wants it any more.
   * @throws Error in words when the thread ended without an answer.
   */
  ask<Answer>(question: unknown, late?: Late<Answer>): Promise<Answer>;
  /** Ends what still runs; what it had not finished is as if it had never begun. */
  close(): Promise<void>;
}

interface Late<Answer> {
  readonly givenUp: AbortSignal;
  readonly patienceMs: number;
  readonly answer: Answer;
}

/** @param module - Source or bundle of the thread; it finds its question in `workerData`. */
export function createThreads(module: URL): Threads {
  const running = new Set<Worker>();
  return {
    async ask<Answer>(question: unknown, late?: Late<Answer>): Promise<Answer> {
      const thread = new Worker(module, { workerData: question });
      running.add(thread);
      const { promise, resolve, reject } = Promise.withResolvers<Answer>();
      thread.on('message', resolve);
      thread.on('error', reject);
      thread.on('exit', () => reject(new Error('it ended without an answer')));
      let timer: NodeJS.Timeout | undefined;
      late?.givenUp.addEventListener('abort', () => {
        timer = setTimeout(() => resolve(late.answer), late.patienceMs);
      });
      try {
        return await promise;
      } finally {
        clearTimeout(timer);
        running.delete(thread);
        await thread.terminate();
      }
    },
    async close() {
      await Promise.all([...running].map((thread) => thread.terminate()));
    },
  };
}
