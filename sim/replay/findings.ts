import { outcomeOf } from '../../controller/engine/index.ts';
import type { LogReader } from '../../controller/log/log.ts';
import type { Decision } from '../../shared-types/engine.ts';
import type { DecidedRecord, ReplayReport } from '../../shared-types/log.ts';
import type { Carried } from './carrier.ts';
import { createCauses } from './causes.ts';
import { differingFields, speakingReason } from './difference.ts';
import { createPartings } from './partings.ts';
import { bothReasons } from './reasons.ts';
import { sameOutcome } from './same-outcome.ts';
import { createTally, noTotals, type Tally } from './tally.ts';

type Found = Pick<
  ReplayReport,
  | 'differences'
  | 'decidedOtherwise'
  | 'firstDifference'
  | 'byField'
  | 'byCause'
  | 'parted'
  | 'partings'
  | 'asked'
  | 'logged'
  | 'replayed'
>;

/** What a replay finds as it goes; it does not grow with the span. */
export interface Findings {
  add(record: DecidedRecord, carried: Carried): void;
  found(): Found;
}

export function createFindings(reader: LogReader): Findings {
  const causes = createCauses();
  const partings = createPartings();
  let differences = 0;
  let firstDifference: ReplayReport['firstDifference'] = null;
  let tallies: Tallies | undefined;

  function differ(record: DecidedRecord, decision: Decision): void {
    const replayed = outcomeOf(decision);
    const fields = differingFields(record.outcome, replayed);
    const speaking = speakingReason(fields);
    differences++;
    causes.add(fields, record.outcome.reasons[speaking], replayed.reasons[speaking]);
    firstDifference ??= {
      atMs: record.input.nowMs,
      step: record.step,
      fields,
      logged: record.outcome,
      replayed,
      ...bothReasons(speaking, record.outcome, decision),
      input: record.input,
    };
  }

  return {
    add(record, { before, decision }) {
      tallies ??= talliesFrom(reader, record, before);
      tallies.logged.read(record.outcome.total);
      tallies.replayed.read(decision.meter.total);
      const same = sameOutcome(record.outcome, decision);
      partings.add(record, decision, same);
      if (!same) differ(record, decision);
    },
    found: () => ({
      differences,
      decidedOtherwise: causes.decidedOtherwise(),
      firstDifference,
      byField: causes.byField(),
      byCause: causes.byCause(),
      ...partings.found(),
      logged: tallies?.logged.gained() ?? noTotals,
      replayed: tallies?.replayed.gained() ?? noTotals,
    }),
  };
}

interface Tallies {
  readonly logged: Tally;
  readonly replayed: Tally;
}

/**
 * Begins with the totals before the first step: as the step before logged them, else as the state held them. Where
 * nothing of either is left, what the first step gained is not known.
 */
function talliesFrom(reader: LogReader, record: DecidedRecord, { from, state }: Carried['before']): Tallies {
  const held = state.meter.total;
  const [before] = reader.between(record.run, record.step - 2, record.step);
  const { total } = before?.outcome ?? (from === 'nothing' ? record.outcome : { total: held });
  return { logged: createTally(total), replayed: createTally(held) };
}
