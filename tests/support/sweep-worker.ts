import { parentPort, workerData } from 'node:worker_threads';
import type { Settings } from '../../shared-types/settings.ts';
import { createTeller, type WorkerTask } from '../../sim/replay/sweep/messages.ts';
import type { Unit } from '../../sim/replay/sweep/queue.ts';
import type { ReadyOrNot } from '../../sim/replay/sweep/trial.ts';

/** A thread of a sweep whose days are a formula: quick, and as deterministic as the real ones. */
const { days, settings, loops, seed } = workerData as WorkerTask;

function makeReady(index: number): ReadyOrNot {
  const day = days[index] as string;
  if (day === 'sunless') return { ok: false, why: 'there is no sun on sunless' };
  if (day === 'broken') throw new Error('the worker broke');
  const scale = 1 + index / 7;
  const heat = ({ startDifferenceK, fillsPerDay }: Settings) =>
    loops.map(
      (_, loop) =>
        3.6e7 * scale * (1 + 0.01 * loop + 0.02 * startDifferenceK + seed / 1000) * (1 - 0.1 / fillsPerDay),
    ) as [number];
  const evaluate = (tried: Settings) => ({
    heatHomeJ: heat(tried),
    electricityJ: 1e6 * scale,
    starts: 20 - tried.startDifferenceK,
    fills: tried.fillsPerDay,
    aboveFreezingK: index === 0 ? null : 5,
    mostIceKg: index,
    belowLinerLimitK: 20 - index,
    beyondLogS: 1800,
  });
  return { ok: true, ready: { evaluate, remarks: ['Made up.'] } };
}

const answer = createTeller(makeReady, settings, (found) => parentPort?.postMessage(found));
parentPort?.on('message', (unit: Unit) => answer(unit));
