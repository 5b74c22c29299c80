import type { LogReader } from '../../controller/log/log.ts';
import { type Rule, rulesOf } from './rules.ts';

/** Site and settings that were in force last, as far as the log still has them. */
export function newestRule(reader: LogReader): Rule | undefined {
  const newestMs = reader.newestMs();
  if (newestMs === null) return undefined;
  for (const record of reader.recordsWithin(newestMs, newestMs + 1)) return rulesOf(reader).of(record);
  return undefined;
}
