import type { Tried } from './trial.ts';

/** What is known of one day. */
export interface DayResult {
  /** Why the day cannot be lived again; null while nothing speaks against it. */
  why: string | null;
  remarks: readonly string[];
  /** Outcome of each point; null where it was not tried yet. */
  readonly tried: (Tried | null)[];
}

/** Of each day, what was found; in the order of days and points, whoever found it and when. */
export type Results = readonly DayResult[];

export function noResults(days: number, points: number): DayResult[] {
  return Array.from({ length: days }, () => ({
    why: null,
    remarks: [],
    tried: Array.from({ length: points }, () => null),
  }));
}

/** Points that are still to be tried; none of a day that cannot be lived again. */
export function missingOf({ why, tried }: DayResult): number[] {
  return why === null ? tried.flatMap((one, point) => (one === null ? [point] : [])) : [];
}
