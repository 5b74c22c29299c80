import { type EngineState, engineVersion, stepOn } from '../../controller/engine/index.ts';
import { importedEngine } from '../../controller/log/layout.ts';
import type { LogReader } from '../../controller/log/log.ts';
import type { Decision } from '../../shared-types/engine.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import { remarkOnGap } from './gaps.ts';
import { openLoopInput } from './open-loop-input.ts';
import type { Driving } from './outputs-differ.ts';
import type { Moment, Remarks } from './remarks.ts';
import type { Rule, Rules } from './rules.ts';
import { type TakenUp, takeUp } from './taking-up.ts';

/** Decides logged steps again, one after another. */
export interface Carrier {
  decide(record: LogRecord, rule: Rule): Carried;
  /** Engines that decided the records so far, as the log names them. */
  engines(): string[];
}

/** A logged step that was decided again. */
export interface Carried {
  /** The engine's state before the step, and what it came from. */
  readonly before: Before;
  readonly state: EngineState;
  readonly decision: Decision;
  /** By what the loop was driven that answers at the step after. */
  readonly drivenBy: Driving;
}

type Before =
  | TakenUp
  /** The record before is that of the step before. */
  | { readonly from: 'step-before'; readonly state: EngineState };

interface Place extends Carried {
  readonly record: LogRecord;
}

const withheld =
  'While the loop would have been driven otherwise, its flow, levels, pump power and feedback were withheld: ' +
  'what is told of failed sensors, alarms and heat at those steps is no fault of the engine.';

/**
 * Carries the engine's state from record to record, and through restarts as the controller carried it.
 *
 * Where this very version decided, every input is given as it was. Where another version did and would
 * have driven the loop otherwise, what answers to the outputs of then is withheld, as in a what-if.
 */
export function createCarrier(reader: LogReader, rules: Rules, remarks: Remarks, moment: Moment): Carrier {
  const engines = new Set<string>();
  let place: Place | undefined;
  let isOther = false;

  function meetRun(run: number): void {
    const then = reader.engineVersion(run) ?? 'unknown';
    isOther = then !== engineVersion;
    if (then === importedEngine)
      remarks.add('The loop was driven by another controller, by rules of its own.');
    else if (isOther) remarks.add(`Engine ${then} decided then; this is engine ${engineVersion}.`);
    engines.add(then);
  }

  return {
    decide(record, { site, settings }) {
      if (place?.record.run !== record.run) meetRun(record.run);
      if (place !== undefined) remarkOnGap(place.record, record, remarks, site.timeZone, moment);
      const before = beforeOf(reader, record, place, rules, remarks);
      const input = isOther ? openLoopInput(record.input, place?.drivenBy, place?.decision) : record.input;
      if (input !== record.input) remarks.add(withheld);
      const { state, decision } = stepOn(before.state, input, site, settings);
      place = { record, before, state, decision, drivenBy: isOther ? record.outcome : decision };
      return place;
    },
    engines: () => [...engines],
  };
}

/** Carries the state on within a run; takes it up anew where a run begins or records are missing. */
function beforeOf(
  reader: LogReader,
  record: LogRecord,
  place: Place | undefined,
  rules: Rules,
  remarks: Remarks,
): Before {
  if (place?.record.run === record.run && place.record.step + 1 === record.step)
    return { from: 'step-before', state: place.state };
  const taken = takeUp(reader, record, rules, place?.state);
  if (taken.from === 'before-gap')
    remarks.add(
      `No state was kept in run ${record.run} before step ${record.step}; the one before it goes on.`,
    );
  if (taken.from === 'nothing')
    remarks.add(
      `No usable state from before step ${record.step} of run ${record.run}; the engine begins anew.`,
    );
  return taken;
}
