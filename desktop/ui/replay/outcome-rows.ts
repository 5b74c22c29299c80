import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import { channelMeaning } from '../../../shared-types/channels.ts';
import type { Outcome, ReplayReport } from '../../../shared-types/log.ts';
import type { NumberFormats } from '../format/numbers.ts';
import { en } from '../text/en.ts';

/** One thing that both sides decided, in words. */
export interface OutcomeRow {
  readonly title: string;
  readonly logged: string;
  readonly replayed: string;
}

type Difference = NonNullable<ReplayReport['firstDifference']>;

/**
 * What both sides decided at the first difference; a row that reads alike on both has not differed.
 *
 * @param inUnits - Puts a sentence of the controller into the chosen units.
 */
export function outcomeRows(
  difference: Difference,
  numbers: NumberFormats,
  inUnits: (sentence: string) => string,
): readonly OutcomeRow[] {
  const { rows } = en.replay;
  const both = (title: string, words: (outcome: Outcome) => string): OutcomeRow => ({
    title,
    logged: words(difference.logged),
    replayed: words(difference.replayed),
  });
  return [
    both(rows.phase, (outcome) => en.phases[outcome.phase]),
    {
      title: rows.reason,
      logged: inUnits(difference.loggedReason),
      replayed: inUnits(difference.replayedReason),
    },
    both(
      rows.pump,
      ({ outputs, reasons }) => `${numbers.percent(outputs.pumpFraction)}, ${en.reasons[reasons.pump]}`,
    ),
    both(
      rows.drain,
      ({ outputs, reasons }) =>
        `${outputs.drainOpen ? en.replay.open : en.replay.closed}, ${en.reasons[reasons.drain]}`,
    ),
    both(rows.alarms, (outcome) => list(outcome.alarms.map((code) => alarmCatalogue[code].title))),
    both(rows.failed, (outcome) => list(outcome.failed.map((channel) => channelMeaning[channel].title))),
  ];
}

const list = (words: readonly string[]): string => (words.length === 0 ? en.replay.none : words.join(', '));
