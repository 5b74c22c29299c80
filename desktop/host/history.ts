import { Worker } from 'node:worker_threads';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { CheckedParams, HistoryAnswer, HistoryMethod, HistoryQuestion } from './history-messages.ts';
import type { JobFlags } from './job-flags.ts';
import { type Refusal, refusal, wordsOf } from './replies.ts';

/** Questions to the logs, answered by one worker thread that starts with the first of them. */
export interface History {
  /** @param flags - Of a question whose progress is watched and that may be given up. */
  ask<M extends HistoryMethod>(
    method: M,
    params: CheckedParams<M>,
    flags?: JobFlags,
  ): Promise<MonitorReply<M>>;
  close(): Promise<void>;
}

export interface HistoryOptions {
  readonly dataFolder: string;
  /** The worker's module: source beside this file, or a bundle. */
  readonly worker: URL;
  /** Told after each answer what the log of a site says about its own state. */
  readonly onRemarks: (site: string, remarks: readonly string[]) => void;
  /** A question that takes longer is given up, and the worker with it [ms]. */
  readonly timeoutMs: number;
}

interface Waiting {
  readonly settle: (reply: HistoryAnswer['reply'] | Refusal) => void;
  readonly timer: NodeJS.Timeout;
}

export function createHistory(options: HistoryOptions): History {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | undefined;
  let lastId = 0;

  function settle(id: number, reply: HistoryAnswer['reply'] | Refusal): void {
    const entry = waiting.get(id);
    waiting.delete(id);
    clearTimeout(entry?.timer);
    entry?.settle(reply);
  }

  /** Ends the worker and every question it holds; the next question starts a new one. */
  function giveUp(ended: Worker, reply: Refusal): void {
    if (worker !== ended) return;
    worker = undefined;
    void ended.terminate();
    for (const id of [...waiting.keys()]) settle(id, reply);
  }

  function start(): Worker {
    const started = new Worker(options.worker, { workerData: { dataFolder: options.dataFolder } });
    started.unref();
    started.on('message', ({ id, site, reply, remarks }: HistoryAnswer) => {
      if (worker !== started) return;
      settle(id, reply);
      options.onRemarks(site, remarks);
    });
    started.on('error', (thrown) => giveUp(started, stopped(wordsOf(thrown))));
    started.on('exit', (code) => giveUp(started, stopped(`code ${code}`)));
    return started;
  }

  return {
    ask<M extends HistoryMethod>(method: M, params: CheckedParams<M>, flags?: JobFlags) {
      worker ??= start();
      const asked = worker;
      const id = ++lastId;
      const { promise, resolve } = Promise.withResolvers<MonitorReply<M>>();
      const timer = setTimeout(() => giveUp(asked, tooLong(options.timeoutMs)), options.timeoutMs);
      waiting.set(id, { timer, settle: (reply) => resolve(reply as MonitorReply<M>) });
      asked.postMessage({ id, method, params, flags } satisfies HistoryQuestion<M>);
      return promise;
    },
    async close() {
      const ended = worker;
      worker = undefined;
      for (const id of [...waiting.keys()]) settle(id, stopped('the monitor closes'));
      await ended?.terminate();
    },
  };
}

const stopped = (why: string) => refusal('error', `The reader of the logs stopped: ${why}.`);
const tooLong = (timeoutMs: number) =>
  refusal(
    'error',
    `The log gave no answer within ${timeoutMs / 1000} s.`,
    'Ask again, or for a shorter span.',
  );
