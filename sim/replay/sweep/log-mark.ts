import { createHash } from 'node:crypto';
import type { LogReader } from '../../../controller/log/log.ts';

/**
 * Tells what the log holds of days, and of the days before them, from what it held of them before: by the summary of
 * each, since a controller's log only grows. Days of another logger may be taken in anew: of them every record counts.
 */
export function logMarkOf(reader: LogReader, days: readonly string[]): string {
  const hash = createHash('sha256');
  const kept = reader.days();
  for (const [index, summary] of kept.entries()) {
    const next = kept[index + 1]?.day;
    if (!days.includes(summary.day) && !(next !== undefined && days.includes(next))) continue;
    hash.update(JSON.stringify(summary));
    if (summary.imported === true)
      for (const record of reader.records(summary.day)) hash.update(JSON.stringify(record));
  }
  return hash.digest('hex');
}
