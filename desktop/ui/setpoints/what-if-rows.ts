import type { DecisionCount, Side, WhatIfReport } from '../../../shared-types/what-if.ts';
import type { NumberFormats } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { en } from '../text/en.ts';

/** One thing of both sides, in words. */
export interface WhatIfRow {
  readonly title: string;
  readonly base: string;
  readonly other: string;
}

const text = en.setpoints.whatIf;

/**
 * What both sides decided where they part, and why.
 *
 * @param inUnits - Puts a sentence of the controller into the chosen units.
 */
export function sideRows(
  { base, other }: NonNullable<WhatIfReport['firstDifference']>,
  numbers: NumberFormats,
  inUnits: (sentence: string) => string,
): readonly WhatIfRow[] {
  const row = (title: string, words: (side: Side) => string) => ({
    title,
    base: words(base),
    other: words(other),
  });
  return [
    row(text.phase, ({ phase }) => en.phases[phase]),
    row(text.pump, ({ pumpFraction }) => numbers.percent(pumpFraction)),
    row(text.drain, ({ drainOpen }) => (drainOpen ? text.open : text.closed)),
    row(text.reason, ({ reason }) => inUnits(reason)),
  ];
}

/** What both sides asked of the loop over the day. */
export function countRows(
  { base, other }: Pick<WhatIfReport, 'base' | 'other'>,
  numbers: NumberFormats,
): readonly WhatIfRow[] {
  const row = (title: string, words: (count: DecisionCount) => string) => ({
    title,
    base: words(base),
    other: words(other),
  });
  return [
    row(text.starts, ({ starts }) => numbers.count(starts)),
    row(text.fills, ({ fills }) => numbers.count(fills)),
    row(text.pumpRun, ({ pumpRunS }) => durationText(pumpRunS * 1000)),
  ];
}
