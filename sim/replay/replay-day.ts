import type { LogReader } from '../../controller/log/log.ts';
import type { ReplayReport } from '../../shared-types/log.ts';
import { replaySpan } from './replay-span.ts';

/** Replays one local day. @throws RangeError when nothing of it is kept. */
export function replayDay(reader: LogReader, day: string): ReplayReport {
  return replaySpan(reader, { day, lastDay: day });
}
