import type { LogReader } from '../../../controller/log/log.ts';
import type { Comparison } from '../../../shared-types/tuning.ts';

/**
 * What the log says of a day, as a comparison counts it: what came home less what was taken from the store, since a
 * simulated loop is judged by the same. A meter keeps both in totals of their own.
 *
 * @throws RangeError when nothing of the day is kept.
 */
export function loggedOf(reader: Pick<LogReader, 'days'>, day: string): Comparison['logged'] {
  const summary = reader.days().find((kept) => kept.day === day);
  if (summary === undefined) throw new RangeError(`nothing of ${day} is kept`);
  const { heatHomeJ, heatLostJ, electricityJ, pumpRunS, starts, fills } = summary;
  const netJ = heatHomeJ === null ? null : heatHomeJ - (heatLostJ ?? 0);
  return { heatHomeJ: netJ, electricityJ, pumpRunS, starts, fills };
}
