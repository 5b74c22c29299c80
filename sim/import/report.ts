import type { Channel } from '../../shared-types/channels.ts';
import type { Decimal, Delimiter, Encoding } from './guess.ts';

/** Why a cell or a row was not taken. */
export type MissCause =
  | 'not-a-time'
  | 'skipped-by-clock'
  | 'not-a-number'
  | 'out-of-range'
  | 'out-of-order'
  | 'duplicated'
  | 'not-csv';

/** A place in the file that was not understood, or not taken. */
export interface Miss {
  readonly line: number;
  readonly column: string;
  readonly text: string;
  readonly cause: MissCause;
}

export interface ImportReport {
  readonly encoding: Encoding;
  readonly delimiter: Delimiter;
  readonly decimal: Decimal;
  readonly rows: number;
  readonly rowsTaken: number;
  readonly firstMs: number | null;
  readonly lastMs: number | null;
  /** The commonest distance of neighbouring rows [ms]; null with fewer than two. */
  readonly usualStepMs: number | null;
  /** Distances of more than four usual steps. */
  readonly gaps: number;
  /** Times of the hour that the clocks repeat: each names two instants. */
  readonly repeatedTimes: number;
  readonly values: Readonly<Partial<Record<Channel, number>>>;
  readonly misses: Readonly<Partial<Record<MissCause, number>>>;
  /** The first of the misses, with their places. */
  readonly places: readonly Miss[];
}

const mostPlaces = 100;
const mostText = 80;

/** Counts misses and keeps the places of the first. */
export function createMisses() {
  const counts: Partial<Record<MissCause, number>> = {};
  const places: Miss[] = [];
  return {
    counts,
    places,
    note(miss: Miss): void {
      counts[miss.cause] = (counts[miss.cause] ?? 0) + 1;
      if (places.length < mostPlaces) places.push({ ...miss, text: miss.text.slice(0, mostText) });
    },
  };
}

/** Distances of neighbouring rows by how often each occurs. */
export function createSteps() {
  const times = new Map<number, number>();
  const usualStepMs = (): number | null => {
    let usual: number | null = null;
    for (const [stepMs, count] of times)
      if (usual === null || count > (times.get(usual) as number)) usual = stepMs;
    return usual;
  };
  return {
    note: (stepMs: number) => void times.set(stepMs, (times.get(stepMs) ?? 0) + 1),
    usualStepMs,
    gaps(): number {
      const usual = usualStepMs() ?? 0;
      return [...times].reduce((sum, [stepMs, count]) => sum + (stepMs > 4 * usual ? count : 0), 0);
    },
  };
}
