import type { LogReader } from '../../controller/log/log.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { WhatIf } from '../../sim/replay/what-if.ts';
import type { CheckedParams } from './history-messages.ts';
import { isCancelled, type JobFlags, setDone, setStage } from './job-flags.ts';
import { wasGivenUp } from './was-given-up.ts';

/** Decides a day under other settings, tells how far it is, and ends when nobody wants it any more. */
export function answerWhatIf(
  reader: LogReader,
  { day, settings }: CheckedParams<'whatIf'>,
  whatIf: WhatIf,
  flags: JobFlags | undefined,
): MonitorReply<'whatIf'> {
  const allSteps = reader.days().find((summary) => summary.day === day)?.steps ?? 0;
  if (flags !== undefined) setStage(flags, 'deciding');
  const goOn = (steps: number) => {
    if (flags === undefined) return true;
    setDone(flags, steps / allSteps);
    return !isCancelled(flags);
  };
  const result = whatIf(reader, day, settings, { goOn });
  return result === undefined ? wasGivenUp : { ok: true, result };
}
