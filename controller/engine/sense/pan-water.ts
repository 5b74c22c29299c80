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
export const filmMm = 2;
/** A drain pump runs on to this, which its sump holds: a depth [mm], or a share of the full depth. */
const sumpMm = 1;
const sumpFraction = 0.02;

/** What a level sensor says of the pan, with hysteresis at both ends. */
export function levelSays(levelMm: number, depthMm: number, before: WaterLevel): WaterLevel {
  const emptyMm = Math.max(filmMm, (before === 'empty' ? emptyEndsFraction : emptyFraction) * depthMm);
  if (levelMm <= emptyMm) return 'empty';
  return levelMm >= (before === 'full' ? fullEndsFraction : fullFraction) * depthMm ? 'full' : 'part';
}

export interface WaterEvidence {
  readonly levelMm: number | null;
  /** What fresh feedback says of the drain valve; null where nothing tells. */
  readonly drainSays: boolean | null;
  /** The pump is seen to run although it is off. */
  readonly pumpRuns: boolean;
  /** Phase that was in force since the step before, and for how long [ms]. */
  readonly phase: Phase;
  readonly elapsedMs: number;
  readonly site: Site;
  readonly settings: Settings;
}

/** The belief of the pan's water after the time since the last step. */
export function updateWater(before: WaterMemory, evidence: WaterEvidence): WaterMemory {
  const { levelMm, drainSays, pumpRuns, phase, elapsedMs, site, settings } = evidence;
  const draining = phase.name === 'emptying' || phase.name === 'stopped' || phase.name === 'empty';
  const counts = draining && canEmpty(site) && before.level !== 'empty';
  const emptyingMs = counts ? before.emptyingMs + elapsedMs : 0;
  // What a level shows to be full has not drained at all, and behind a drain that is said to be shut, or under a
  // pump that runs on, no time proves anything.
  const seen = levelMm === null ? null : levelSays(levelMm, depthMmOf(site), before.level);
  const held = drainSays === false || pumpRuns;
  const drainedMs = counts && seen !== 'full' ? before.drainedMs + (held ? 0 : elapsedMs) : 0;
  const level =
    seen === null
      ? withoutLevel(before.level, drainedMs, evidence)
      : withLevel(seen, levelMm as number, before.level, drainedMs, evidence);
  const overdue = level !== 'empty' && (before.overdue || emptyingMs >= overdueMs(settings));
  return level === before.level &&
    drainedMs === before.drainedMs &&
    emptyingMs === before.emptyingMs &&
    overdue === before.overdue
    ? before
    : { ...before, level, drainedMs, emptyingMs, overdue };
}

/** An emptying that lasts longer has failed [ms]. */
export function overdueMs(settings: Settings): number {
  return 1.5 * settings.drainTimeS * 1000;
}

/** A drain pump leaves what the level's hysteresis calls empty: it is to run on to the end. */
function withLevel(
  seen: WaterLevel,
  levelMm: number,
  before: WaterLevel,
  drainedMs: number,
  { phase, site, settings }: WaterEvidence,
): WaterLevel {
  const pumping = phase.name === 'emptying' || (phase.name === 'stopped' && before !== 'empty');
  if (site.drain !== 'drain-pump' || !pumping || seen !== 'empty') return seen;
  const ended =
    levelMm <= Math.max(sumpMm, sumpFraction * depthMmOf(site)) || drainedMs >= settings.drainTimeS * 1000;
  return ended ? 'empty' : 'part';
}

function depthMmOf({ pan }: Site): number {
  return pan.waterDepthM * 1000;
}

function withoutLevel(
  before: WaterLevel,
  drainedMs: number,
  { phase, pumpRuns, settings }: WaterEvidence,
): WaterLevel {
  // A pump that runs on brings water into a pan that was empty.
  if (pumpRuns) return before === 'empty' ? 'unknown' : before;
  if (drainedMs >= settings.drainTimeS * 1000) return 'empty';
  return phase.name === 'filling' ? 'part' : before;
}
