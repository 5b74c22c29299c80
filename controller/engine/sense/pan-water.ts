import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { canEmpty } from '../pan.ts';
import type { Phase, WaterLevel, WaterMemory } from '../state.ts';

/** Shares of the water depth: full and empty, and where they end again. Design choices. */
const fullFraction = 0.9;
const fullEndsFraction = 0.8;
const emptyFraction = 0.1;
const emptyEndsFraction = 0.2;
/** A level below this counts as empty in the shallowest pan [mm]. */
const filmMm = 2;

/** What a level sensor says of the pan, with hysteresis at both ends. */
export function levelSays(levelMm: number, depthMm: number, before: WaterLevel): WaterLevel {
  const emptyMm = Math.max(filmMm, (before === 'empty' ? emptyEndsFraction : emptyFraction) * depthMm);
  if (levelMm <= emptyMm) return 'empty';
  return levelMm >= (before === 'full' ? fullEndsFraction : fullFraction) * depthMm ? 'full' : 'part';
}

export interface WaterEvidence {
  readonly levelMm: number | null;
  /** Phase that was in force since the step before, and for how long [ms]. */
  readonly phase: Phase;
  readonly elapsedMs: number;
  readonly site: Site;
  readonly settings: Settings;
}

/** The belief of the pan's water after the time since the last step. */
export function updateWater(before: WaterMemory, evidence: WaterEvidence): WaterMemory {
  const { levelMm, phase, elapsedMs, site, settings } = evidence;
  const draining = phase.name === 'emptying' || phase.name === 'stopped' || phase.name === 'empty';
  const counts = draining && canEmpty(site) && before.level !== 'empty';
  const drainedMs = counts ? before.drainedMs + elapsedMs : 0;
  const level =
    levelMm === null
      ? withoutLevel(before.level, phase, drainedMs, settings)
      : levelSays(levelMm, site.pan.waterDepthM * 1000, before.level);
  const overdue = level !== 'empty' && (before.overdue || drainedMs >= overdueMs(settings));
  return level === before.level && drainedMs === before.drainedMs && overdue === before.overdue
    ? before
    : { ...before, level, drainedMs, overdue };
}

/** An emptying that lasts longer has failed [ms]. */
export function overdueMs(settings: Settings): number {
  return 1.5 * settings.drainTimeS * 1000;
}

function withoutLevel(
  before: WaterLevel,
  phase: Phase,
  drainedMs: number,
  { drainTimeS }: Settings,
): WaterLevel {
  if (drainedMs >= drainTimeS * 1000) return 'empty';
  return phase.name === 'filling' ? 'part' : before;
}
