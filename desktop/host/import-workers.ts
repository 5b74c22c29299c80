import { Worker } from 'node:worker_threads';
import type { ImportAnswers, ImportQuestion } from './import-messages.ts';

type Question<Kind> = Extract<ImportQuestion, { kind: Kind }>;

/** Workers that each answer one question and end. */
interface ImportWorkers {
  /** @throws Error in words when the worker ended without an answer. */
  ask<Kind extends ImportQuestion['kind']>(question: Question<Kind>): Promise<ImportAnswers[Kind]>;
  /** Ends what still runs; what it had not finished is as if it had never begun. */
  close(): Promise<void>;
}

/** @param module - Source or bundle of the worker. */
export function createImportWorkers(module: URL): ImportWorkers {
  const running = new Set<Worker>();
  return {
    ask<Kind extends ImportQuestion['kind']>(question: Question<Kind>) {
      const { promise, resolve, reject } = Promise.withResolvers<ImportAnswers[Kind]>();
      const worker = new Worker(module, { workerData: question });
      running.add(worker);
      worker.once('message', resolve);
      worker.once('error', reject);
      worker.once('exit', () => {
        running.delete(worker);
        reject(new Error('the reader of the file stopped'));
      });
      return promise;
    },
    async close() {
      await Promise.all([...running].map((worker) => worker.terminate()));
    },
  };
}
