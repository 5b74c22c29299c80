import { engineVersion } from '../../controller/engine/index.ts';
import type { LogReader, SavedState } from '../../controller/log/log.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { noTotals, since } from '../../sim/replay/tally.ts';

/** A log of one run, one site and one set of settings that no file holds. */
export function memoryLog(
  records: readonly LogRecord[],
  saved: readonly SavedState[],
  site: Site,
  settings: Settings,
): LogReader {
  const byDay = Map.groupBy(records, ({ input }) => input.localDay);
  const nothing = () => {
    throw new Error('this log is asked for records alone');
  };
  return {
    remarks: [],
    days: () =>
      [...byDay].map(([day, kept]) => ({
        day,
        steps: kept.length,
        firstMs: kept[0]?.input.nowMs ?? 0,
        lastMs: kept.at(-1)?.input.nowMs ?? 0,
        ...since(kept[0]?.outcome.total ?? noTotals, kept.at(-1)?.outcome.total ?? noTotals),
        alarms: 0,
        coveredFraction: 1,
      })),
    day: nothing,
    span: nothing,
    records: (day) => (byDay.get(day) ?? [])[Symbol.iterator](),
    recordsWithin: nothing,
    stateBefore: (_run, step) => saved.findLast((kept) => kept.step <= step) ?? null,
    between: (_run, after, before) => records.slice(after, before - 1)[Symbol.iterator](),
    site: () => site,
    settings: () => settings,
    engineVersion: () => engineVersion,
    newestMs: () => records.at(-1)?.input.nowMs ?? null,
    newestDay: nothing,
    events: () => [],
    facts: nothing,
    close: () => undefined,
  };
}
