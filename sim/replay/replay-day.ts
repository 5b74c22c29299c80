import {
  type EngineState,
  engineVersion,
  outcomeOf,
  reasonText,
  stepOn,
} from '../../controller/engine/index.ts';
import type { LogReader } from '../../controller/log/log.ts';
import type { Decision } from '../../shared-types/engine.ts';
import type { LogRecord, Outcome, ReplayReport } from '../../shared-types/log.ts';
import { decidedOutcome } from './decided.ts';
import { differingFields, speakingReason } from './difference.ts';
import { createRemarks, localTime, type Remarks } from './remarks.ts';
import { type Rules, rulesOf } from './rules.ts';
import { takeUp } from './taking-up.ts';
import { createTally, noTotals, since, type Tally } from './tally.ts';

/**
 * Runs the engine over a logged day again, on what it was given then, and compares every outcome.
 *
 * The state is taken up before the day's first record and carried through restarts as the controller
 * carried it. Records are read one after another; memory does not grow with the day.
 *
 * @throws RangeError when nothing of that day is kept, or nothing was decided in it.
 */
export function replayDay(reader: LogReader, day: string): ReplayReport {
  const walk = createWalk(reader);
  for (const record of reader.records(day)) walk.meet(record);
  return walk.report(day);
}

interface Place {
  readonly record: LogRecord;
  readonly state: EngineState;
}

function createWalk(reader: LogReader) {
  const rules = rulesOf(reader);
  const remarks = createRemarks();
  const engines = new Set<string>();
  let place: Place | undefined;
  let steps = 0;
  let skipped = 0;
  let differences = 0;
  let first: ReplayReport['firstDifference'] = null;
  let tallies: Tallies | undefined;

  function meet(record: LogRecord): void {
    const logged = decidedOutcome(record);
    steps++;
    const rule = rules.of(record);
    if (rule === undefined) {
      skipped++;
      remarks.add(missingRule(record));
      return;
    }
    remarkOnGap(place?.record, record, remarks, rule.site.timeZone);
    if (place?.record.run !== record.run) engines.add(reader.engineVersion(record.run) ?? 'unknown');
    const before = stateFor(reader, record, place, rules, remarks);
    const { state, decision } = stepOn(before, record.input, rule.site, rule.settings);
    place = { record, state };
    const replayed = outcomeOf(decision);
    tallies ??= talliesFrom(reader, record, decision);
    tallies.logged.read(logged.total);
    tallies.replayed.read(replayed.total);
    const fields = differingFields(logged, replayed);
    if (fields.length === 0) return;
    differences++;
    first ??= differenceAt(record, fields, { logged, replayed }, decision);
  }

  function report(day: string): ReplayReport {
    if (steps === 0) throw new RangeError(`nothing of ${day} is kept`);
    for (const version of engines)
      if (version !== engineVersion)
        remarks.add(`Engine ${version} decided then; this is engine ${engineVersion}.`);
    for (const text of reader.remarks) remarks.add(`The log: ${text}.`);
    return {
      day,
      steps,
      same: differences === 0 && skipped === 0,
      differences,
      firstDifference: first,
      logged: tallies?.logged.gained() ?? noTotals,
      replayed: tallies?.replayed.gained() ?? noTotals,
      engineThen: [...engines],
      engineNow: engineVersion,
      remarks: remarks.list(),
    };
  }

  return { meet, report };
}

/** Carries the state on within a run; takes it up anew where a run begins or records are missing. */
function stateFor(
  reader: LogReader,
  record: LogRecord,
  place: Place | undefined,
  rules: Rules,
  remarks: Remarks,
): EngineState {
  if (place?.record.run === record.run && place.record.step + 1 === record.step) return place.state;
  const taken = takeUp(reader, record, rules, place?.state);
  if (taken.from === 'before-gap')
    remarks.add(
      `No state was kept in run ${record.run} before step ${record.step}; the one before it goes on.`,
    );
  if (taken.from === 'nothing')
    remarks.add(
      `No usable state from before step ${record.step} of run ${record.run}; the engine begins anew.`,
    );
  return taken.state;
}

interface Tallies {
  readonly logged: Tally;
  readonly replayed: Tally;
}

/** Begins with the totals before the day's first step: as the step before logged them, else as the state holds them. */
function talliesFrom(reader: LogReader, record: LogRecord, { meter }: Decision): Tallies {
  const held = since(meter.today, meter.total);
  const [before] = reader.between(record.run, record.step - 2, record.step);
  return { logged: createTally(before?.outcome.total ?? held), replayed: createTally(held) };
}

function differenceAt(
  record: LogRecord,
  fields: string[],
  { logged, replayed }: { readonly logged: Outcome; readonly replayed: Outcome },
  decision: Decision,
): NonNullable<ReplayReport['firstDifference']> {
  const speaking = speakingReason(fields);
  const reason = decision.reasons[speaking];
  const loggedCode = logged.reasons[speaking];
  return {
    atMs: record.input.nowMs,
    step: record.step,
    fields,
    logged,
    replayed,
    loggedReason: loggedCode === reason.code ? reason.text : reasonText(loggedCode, {}),
    replayedReason: reason.text,
    input: record.input,
  };
}

function missingRule({ siteRevision, settingsRevision }: LogRecord): string {
  return `Site ${siteRevision} or settings ${settingsRevision} are no longer in the log; their steps are left out.`;
}

/** Two minutes without a record are a gap worth a word. */
const gapMs = 120_000;

function remarkOnGap(
  before: LogRecord | undefined,
  record: LogRecord,
  remarks: Remarks,
  timeZone: string,
): void {
  if (before === undefined) return;
  const fromMs = before.input.nowMs;
  const toMs = record.input.nowMs;
  const span = () => `from ${localTime(fromMs, timeZone)} to ${localTime(toMs, timeZone)}`;
  if (toMs - fromMs > gapMs) remarks.add(`Nothing was logged ${span()}.`);
  if (toMs < fromMs) remarks.add(`The calendar clock was put back ${span()}.`);
  if (before.run === record.run && record.step !== before.step + 1)
    remarks.add(`Steps ${before.step + 1} to ${record.step - 1} of run ${record.run} are missing.`);
}
