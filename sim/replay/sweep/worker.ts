import { parentPort, workerData } from 'node:worker_threads';
import { openLogReader } from '../../../controller/log/reader.ts';
import { createTeller, type WorkerTask } from './messages.ts';
import type { Unit } from './queue.ts';
import { makeReady } from './ready-day.ts';

/** A thread of a sweep: it reads the log for itself, so that only settings and sums pass between threads. */
const { logPath, days, settings, loops, seed } = workerData as WorkerTask;
const reader = openLogReader(logPath);
const answer = createTeller(
  (day) => makeReady(reader, days[day] as string, loops, seed),
  settings,
  (found) => parentPort?.postMessage(found),
);
parentPort?.on('message', (unit: Unit) => answer(unit));
