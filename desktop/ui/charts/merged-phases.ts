import type { PhaseSpan } from '../../../shared-types/log.ts';

/** Spans closer than this follow on each other [ms]; anything longer is a pause of the log. */
const adjoiningMs = 60_000;

/**
 * Spans of one phase that follow on each other as one, with the reason that held the longest: the log
 * begins a new span with each new reason, which may change every few seconds.
 */
export function mergedPhases(spans: readonly PhaseSpan[]): readonly PhaseSpan[] {
  const groups: PhaseSpan[][] = [];
  for (const span of spans) {
    const group = groups.at(-1);
    const before = group?.at(-1);
    const follows = before?.phase === span.phase && span.fromMs - before.toMs <= adjoiningMs;
    if (follows) group?.push(span);
    else groups.push([span]);
  }
  return groups.flatMap((group) => {
    const [first, last] = [group[0], group.at(-1)];
    if (first === undefined || last === undefined) return [];
    return [{ ...first, reason: longestReason(group), toMs: last.toMs }];
  });
}

function longestReason(group: readonly PhaseSpan[]): PhaseSpan['reason'] {
  const totals = new Map<PhaseSpan['reason'], number>();
  for (const { reason, fromMs, toMs } of group) totals.set(reason, (totals.get(reason) ?? 0) + toMs - fromMs);
  const [longest] = [...totals].reduce((best, one) => (one[1] > best[1] ? one : best));
  return longest;
}
