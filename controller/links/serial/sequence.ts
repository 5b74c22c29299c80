import { sequenceModulus } from './frames.ts';

/** What a frame's number says about it. */
type SequenceVerdict = 'new' | 'duplicate' | 'old';

export interface SequenceGuard {
  /** Judges a frame's number; `duplicate` and `old` ones are to be ignored. */
  judge(sequence: number): SequenceVerdict;
  /** The sender said hello or the line was plugged in anew: the next number may be any. */
  restart(): void;
}

/**
 * Consecutive old numbers, each one more than the last, that prove a sender which began anew and
 * whose hello was lost.
 */
const proofOfRestart = 3;

/** Judges the numbers of one sender's frames, across the turn-over at 65535. */
export function createSequenceGuard(): SequenceGuard {
  let last: number | undefined;
  let lastOld: number | undefined;
  let oldRun = 0;

  const accept = (sequence: number): SequenceVerdict => {
    last = sequence;
    lastOld = undefined;
    oldRun = 0;
    return 'new';
  };
  const judgeOld = (sequence: number): SequenceVerdict => {
    oldRun = lastOld !== undefined && sequence === nextSequence(lastOld) ? oldRun + 1 : 1;
    lastOld = sequence;
    return oldRun >= proofOfRestart ? accept(sequence) : 'old';
  };
  return {
    judge: (sequence) => {
      if (last === undefined) return accept(sequence);
      const ahead = (sequence - last + sequenceModulus) % sequenceModulus;
      if (ahead === 0) return 'duplicate';
      return ahead >= sequenceModulus / 2 ? judgeOld(sequence) : accept(sequence);
    },
    restart: () => {
      last = undefined;
      lastOld = undefined;
      oldRun = 0;
    },
  };
}

/** The number after this one. */
export function nextSequence(sequence: number): number {
  return (sequence + 1) % sequenceModulus;
}
