import type { PhaseName } from '../../../shared-types/engine.ts';
import type { LogRecord } from '../../../shared-types/log.ts';
import type { Site } from '../../../shared-types/site.ts';

/** Depth below which a pan counts as empty [mm]: a level sensor's own error. A design choice. */
const emptyMm = 5;

/** Phase of a step; where another logger knew none, by the pump, the level and how the pan empties. */
export function assumedPhase({ input, outcome }: LogRecord, site: Site): PhaseName {
  if (outcome.phase !== 'unknown') return outcome.phase;
  if (outcome.outputs.pumpFraction > 0) return 'circulating';
  const levelMm = input.readings.panLevelMm?.value ?? null;
  if (levelMm !== null) return levelMm < emptyMm ? 'empty' : 'resting';
  return site.drain === 'pump-stop' || outcome.outputs.drainOpen ? 'empty' : 'resting';
}
