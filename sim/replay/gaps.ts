import type { LogRecord } from '../../shared-types/log.ts';
import type { Moment, Remarks } from './remarks.ts';

/** Two minutes without a record are a gap worth a word. */
const gapMs = 120_000;

/** Tells what is missing between two records, or that the calendar clock was put back. */
export function remarkOnGap(
  before: LogRecord,
  record: LogRecord,
  remarks: Remarks,
  timeZone: string,
  moment: Moment,
): void {
  const fromMs = before.input.nowMs;
  const toMs = record.input.nowMs;
  const span = () => `from ${moment(fromMs, timeZone)} to ${moment(toMs, timeZone)}`;
  if (toMs - fromMs > gapMs) remarks.add(`Nothing was logged ${span()}.`);
  if (toMs < fromMs) remarks.add(`The calendar clock was put back ${span()}.`);
  if (before.run === record.run && record.step !== before.step + 1)
    remarks.add(`Steps ${before.step + 1} to ${record.step - 1} of run ${record.run} are missing.`);
}
