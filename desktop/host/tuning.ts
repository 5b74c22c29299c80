import type { HeavyMethod } from '../../shared-types/jobs.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { CheckedParams } from './history-messages.ts';
import type { JobFlags } from './job-flags.ts';
import { refusal, wordsOf } from './replies.ts';
import { createThreads } from './threads.ts';
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
  const threads = createThreads(worker);
  return {
    async ask<M extends HeavyMethod>(
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
      try {
        const late = { givenUp, patienceMs, answer: wasGivenUp };
        return await threads.ask<TuningAnswer<M>>(question, late);
      } catch (thrown) {
        return refusal('error', `The computation stopped: ${wordsOf(thrown)}.`);
      }
    },
    close: threads.close,
  };
}
