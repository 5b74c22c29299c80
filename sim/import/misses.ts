import type { ImportReport, Miss } from '../../shared-types/foreign-log.ts';

/** Places of one cause that are kept, and characters of their text. Design choices. */
const mostPlaces = 20;
const mostText = 80;

/** What was missed: how often for each cause, and where first. */
export interface Misses {
  readonly counts: ImportReport['misses'];
  readonly places: readonly Miss[];
  note(miss: Miss): void;
}

export function createMisses(): Misses {
  const counts: ImportReport['misses'] = {};
  const places: Miss[] = [];
  return {
    counts,
    places,
    note(miss) {
      const count = (counts[miss.cause] ?? 0) + 1;
      counts[miss.cause] = count;
      if (count > mostPlaces) return;
      const { text, column } = miss;
      places.push({ ...miss, text: text.slice(0, mostText), column: column.slice(0, mostText) });
    },
  };
}
