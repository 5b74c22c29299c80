import type { Decision } from '../../shared-types/engine.ts';
import type { DecidedRecord, ReplayReport } from '../../shared-types/log.ts';
import { createDecisionCounter } from './decision-count.ts';
import { outputsDiffer } from './outputs-differ.ts';
import { bothReasons } from './reasons.ts';
import { sayerOf, sideOf } from './sides.ts';

type Parted = ReplayReport['parted'][number];

/** Finds the stretches in which a loop would have been driven otherwise than it was. */
export interface Partings {
  /** @param same - True when the whole decision is known to be the same. */
  add(record: DecidedRecord, decision: Decision, same: boolean): void;
  found(): Pick<ReplayReport, 'parted' | 'partings' | 'asked'>;
}

const mostListed = 100;

export function createPartings(): Partings {
  const asked = { logged: createDecisionCounter(), replayed: createDecisionCounter() };
  const parted: Parted[] = [];
  let partings = 0;
  let open: Parted | undefined;

  return {
    add(record, decision, same) {
      const { elapsedMs, nowMs } = record.input;
      asked.logged.add(record.outcome, elapsedMs);
      asked.replayed.add(decision, elapsedMs);
      if (same || !outputsDiffer(record.outcome, decision)) {
        open = undefined;
        return;
      }
      if (open === undefined) {
        open = begin(record, decision);
        partings++;
        if (parted.length < mostListed) parted.push(open);
      }
      open.toMs = nowMs;
      open.steps++;
    },
    found: () => ({
      parted,
      partings,
      asked: { logged: asked.logged.count(), replayed: asked.replayed.count() },
    }),
  };
}

function begin({ input, outcome }: DecidedRecord, decision: Decision): Parted {
  const { loggedReason, replayedReason } = bothReasons(sayerOf(outcome, decision), outcome, decision);
  return {
    fromMs: input.nowMs,
    toMs: input.nowMs,
    steps: 0,
    logged: sideOf(outcome, loggedReason),
    replayed: sideOf(decision, replayedReason),
  };
}
