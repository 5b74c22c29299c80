import type { Repair, RepairKind } from './weather-file.ts';

/** A tally of what was mended. */
export interface Repairs {
  note(what: RepairKind, line: number, times?: number): void;
  list(): readonly Repair[];
}

export function createRepairs(): Repairs {
  const tally = new Map<RepairKind, { count: number; firstLine: number }>();
  return {
    note(what, line, times = 1) {
      const seen = tally.get(what) ?? { count: 0, firstLine: line };
      tally.set(what, { count: seen.count + times, firstLine: Math.min(seen.firstLine, line) });
    },
    list: () => [...tally].map(([what, seen]) => ({ what, ...seen })),
  };
}
