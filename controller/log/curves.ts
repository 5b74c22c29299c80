import { type Channel, channels } from '../../shared-types/channels.ts';
import type { PhaseName } from '../../shared-types/engine.ts';
import type { DayCurves, PhaseSpan } from '../../shared-types/log.ts';
import type { ReasonCode } from '../../shared-types/reasons.ts';
import { holeMs } from './day-book.ts';
import { listOf } from './row.ts';

/** Columns of a step that curves are drawn from, the channels' values apart. */
export const curveColumns = ['at_ms', 'failed', 'phase', 'reason_phase', 'pump', 'heat_today_j'] as const;

export type CurveRow = readonly (number | null)[];

export type Curves = Omit<DayCurves, 'day' | 'events'>;

/**
 * Turns rows of `curveColumns` and `channels` into curves.
 *
 * A channel that was neither read nor missed all the while has no curve.
 */
export function curvesOf(rows: readonly CurveRow[], wordOf: (number: number) => string): Curves {
  const column = (index: number) => rows.map((row) => row[index] as number);
  const [atMs, failed] = [column(0), column(1)];
  const failedSets = new Map([...new Set(failed)].map((word) => [word, new Set(listOf(wordOf(word)))]));
  const series: DayCurves['series'] = {};
  channels.forEach((channel, index) => {
    const curve = curveOf(rows, channel, curveColumns.length + index, failedSets);
    if (curve !== undefined) series[channel] = curve;
  });
  return {
    atMs,
    series,
    pumpFraction: column(4),
    heatTodayJ: rows.map((row) => row[5] ?? null),
    phases: spansOf(rows, wordOf),
  };
}

function curveOf(
  rows: readonly CurveRow[],
  channel: Channel,
  position: number,
  failedSets: ReadonlyMap<number, ReadonlySet<string>>,
): (number | null)[] | undefined {
  const failedWords = new Set([...failedSets].filter(([, set]) => set.has(channel)).map(([word]) => word));
  const curve = rows.map((row) => (failedWords.has(row[1] as number) ? null : (row[position] ?? null)));
  return failedWords.size > 0 || curve.some((value) => value !== null) ? curve : undefined;
}

/** Spans of one phase for one reason; a hole in the record ends one. */
function spansOf(rows: readonly CurveRow[], wordOf: (number: number) => string): PhaseSpan[] {
  const spans: PhaseSpan[] = [];
  let [phase, reason]: (number | null | undefined)[] = [];
  for (const [atMs, , nextPhase, nextReason] of rows as readonly (readonly number[])[]) {
    const at = atMs as number;
    const open = spans.at(-1);
    // What another logger wrote has no phases.
    if (wordOf(nextPhase as number) === 'unknown') continue;
    const hole = open === undefined || at - open.toMs > holeMs || at < open.toMs;
    if (!hole) open.toMs = at;
    if (!hole && phase === nextPhase && reason === nextReason) continue;
    [phase, reason] = [nextPhase, nextReason];
    spans.push({
      phase: wordOf(nextPhase as number) as PhaseName,
      reason: wordOf(nextReason as number) as ReasonCode,
      fromMs: at,
      toMs: at,
    });
  }
  return spans;
}
