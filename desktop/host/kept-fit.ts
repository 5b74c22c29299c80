import { existsSync } from 'node:fs';
import type { LoopFit } from '../../shared-types/tuning.ts';
import { fitPath, readFit } from '../../sim/identify/loop-file.ts';

/**
 * The fit kept beside the log of a site; null where there is none.
 *
 * @throws RangeError with the reason for one that cannot be used.
 */
export function keptFit(logPath: string, site: string): LoopFit | null {
  if (!existsSync(fitPath(logPath, site))) return null;
  const read = readFit(logPath, site);
  if (!read.ok) throw new RangeError(read.why);
  return read.fit;
}
