import type { Operation } from '../../../shared-types/engine.ts';
import { en } from '../text/en.ts';

export type RequestKind = 'run-pump' | 'empty' | 'rest' | 'automatic';

/** A request as it is offered: what it will do is said before it is made. */
export interface RequestPlan {
  readonly button: string;
  readonly says: string;
  /** What speaks against it; with one, a person is asked again. */
  readonly consequence: string | undefined;
  readonly operation: Operation;
}

interface MinuteRange {
  readonly least: number;
  readonly most: number;
  readonly first: number;
}

/** Minutes that a request may ask for: the ranges of the operations themselves. */
export const minuteRanges: Readonly<Record<'run-pump' | 'rest', MinuteRange>> = {
  'run-pump': { least: 1, most: 120, first: 15 },
  rest: { least: 1, most: 1440, first: 60 },
};

/** @returns undefined unless the text is a whole number in the range. */
export function parseMinutes(text: string, { least, most }: MinuteRange): number | undefined {
  const minutes = Number(text);
  return /^\d{1,4}$/.test(text.trim()) && minutes >= least && minutes <= most ? minutes : undefined;
}

export function planRequest(kind: RequestKind, minutes: number): RequestPlan {
  const { runPump, empty, rest, automatic } = en.requests;
  switch (kind) {
    case 'run-pump':
      return { ...runPump, says: runPump.says(minutes), operation: { kind, minutes } };
    case 'rest':
      return { ...rest, says: rest.says(minutes), operation: { kind, minutes } };
    case 'empty':
      return { ...empty, operation: { kind } };
    case 'automatic':
      return { ...automatic, consequence: undefined, operation: { kind } };
  }
}
