import { engineVersion } from '../../controller/engine/index.ts';
import type { LogReader } from '../../controller/log/log.ts';
import type { LogRecord, ReplayReport } from '../../shared-types/log.ts';
import { createCarrier } from './carrier.ts';
import { decided } from './decided.ts';
import { createFindings } from './findings.ts';
import { createRemarks, localDayTime, localTime } from './remarks.ts';
import { rulesOf } from './rules.ts';
import { recordsOfSpan, type Span, spanText } from './span.ts';

/**
 * Runs the engine over a logged span again, on what it was given then, and compares every outcome.
 *
 * The state is taken up before the first record and carried through restarts as the controller carried
 * it. Records are read one after another; memory does not grow with the span.
 *
 * @throws RangeError when nothing of the span is kept, or nothing was decided in it.
 */
export function replaySpan(reader: LogReader, span: Span): ReplayReport {
  const remarks = createRemarks();
  const rules = rulesOf(reader);
  const moment = 'day' in span && span.day === span.lastDay ? localTime : localDayTime;
  const carrier = createCarrier(reader, rules, remarks, moment);
  const findings = createFindings(reader);
  let first: LogRecord | undefined;
  let last: LogRecord | undefined;
  let steps = 0;
  let leftOut = 0;
  for (const record of recordsOfSpan(reader, span)) {
    first ??= record;
    last = record;
    steps++;
    const rule = rules.of(record);
    if (rule === undefined) {
      leftOut++;
      remarks.add(missingRule(record));
    } else findings.add(decided(record), carrier.decide(record, rule));
  }
  if (first === undefined || last === undefined)
    throw new RangeError([`nothing of ${spanText(span)} is kept`, ...reader.remarks].join('; '));
  for (const text of reader.remarks) remarks.add(`The log: ${text}.`);
  const found = findings.found();
  return {
    day: first.input.localDay,
    lastDay: last.input.localDay,
    fromMs: first.input.nowMs,
    toMs: last.input.nowMs,
    steps,
    leftOut,
    same: found.differences === 0 && leftOut === 0,
    ...found,
    engineThen: carrier.engines(),
    engineNow: engineVersion,
    remarks: remarks.list(),
  };
}

function missingRule({ siteRevision, settingsRevision }: LogRecord): string {
  return `Site ${siteRevision} or settings ${settingsRevision} are no longer in the log; their steps are left out.`;
}
