import { parentPort, workerData } from 'node:worker_threads';
import { refusal } from './replies.ts';
import type { TuningQuestion } from './tuning-messages.ts';

/** A thread for one long question; it ends with its answer. */
const { params } = workerData as TuningQuestion;
parentPort?.postMessage(refusal('note', `Days of ${params.site} cannot be lived again here yet.`));
