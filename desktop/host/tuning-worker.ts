import { parentPort, workerData } from 'node:worker_threads';
import type { TuningQuestion } from './tuning-messages.ts';
import { answerTuning } from './tuning-questions.ts';

/** A thread for one long question: it answers and has nothing else to do. */
parentPort?.postMessage(await answerTuning(workerData as TuningQuestion));
