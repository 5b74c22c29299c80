import { Worker } from 'node:worker_threads';
import type { HeavyMethod } from '../../shared-types/jobs.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { CheckedParams } from './history-messages.ts';
import type { JobFlags } from './job-flags.ts';
import { refusal, wordsOf } from './replies.ts';
import type { TuningAnswer, TuningQuestion } from './tuning-messages.ts';
import { wasGivenUp } from './was-given-up.ts';

/** Questions that keep a processor busy for long: each has a thread of its own, so that no screen waits for it. */
export interface Tuning {
  /** @param givenUp - Once it is aborted the thread has a moment to end by itself. */
  ask<M extends HeavyMethod>(
    method: M,
    params: CheckedParams<M>,
    flags: JobFlags,
    givenUp: AbortSignal,
  ): Promise<MonitorReply<M>>;
  close(): Promise<void>;
}

export interface TuningOptions {
  readonly dataFolder: string;
  /** The thread's module: source beside this file, or a bundle. */
  readonly worker: URL;
  /** The module of a sweep's own threads, where it is bundled. */
  readonly sweepWorker?: URL | undefined;
  /** How long a thread that nobody wants any more may take to put things in order [ms]. */
  readonly patienceMs: number;
}

export function createTuning({ dataFolder, worker, sweepWorker, patienceMs }: TuningOptions): Tuning {
  const running = new Set<Worker>();
  return {
    ask<M extends HeavyMethod>(
      method: M,
      params: CheckedParams<M>,
      flags: JobFlags,
      givenUp: AbortSignal,
    ): Promise<MonitorReply<M>> {
      const question: TuningQuestion<M> = {
        dataFolder,
        method,
        params,
        flags,
        sweepWorker: sweepWorker?.href,
      };
      const thread = new Worker(worker, { workerData: question });
      running.add(thread);
      const { promise, resolve } = Promise.withResolvers<MonitorReply<M>>();
      let timer: NodeJS.Timeout | undefined;
      givenUp.addEventListener('abort', () => {
        timer = setTimeout(() => resolve(wasGivenUp), patienceMs);
      });
      thread.on('message', (answer: TuningAnswer<M>) => resolve(answer));
      thread.on('error', (thrown) => resolve(stopped(wordsOf(thrown))));
      thread.on('exit', () => resolve(stopped('it ended without an answer')));
      return promise.finally(async () => {
        clearTimeout(timer);
        running.delete(thread);
        await thread.terminate();
      });
    },
    async close() {
      await Promise.all([...running].map((thread) => thread.terminate()));
    },
  };
}

const stopped = (why: string) => refusal('error', `The computation stopped: ${why}.`);
