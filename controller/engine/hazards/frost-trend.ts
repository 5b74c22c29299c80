import type { Site } from '../../../shared-types/site.ts';
import { canEmpty } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { FallMemory } from '../state.ts';

/** The pan is to be proven empty before its water is at this [°C]. */
const dangerC = 1;
/** Emptying is given its own time this many times over. */
const drainTimes = 2;
/**
 * The fall is measured over windows of this length [ms], and the slowest of the last three counts: noise does
 * not last for them, and what passes within five minutes touches two of them at most. Design choices.
 */
const windowMs = 300_000;
const windowsKept = 3;
/**
 * What cools a pan most: a clear dry sky, and a wind of 12 m/s. No pan falls faster by itself. Design choices
 * on the safe side of what was measured (60 to 100 W/m2, 39 W/m2K).
 */
const mostSkyWM2 = 120;
const mostConvectionWM2K = 40;
/** The air may be this much colder than its sensor says [K]; a design choice. */
const airErrorK = 5;
/** Heat that warms a cubic metre of water by one kelvin [J/m3K], at 10 °C. */
const waterJM3K = 4.194e6;

/** Carries the measured falls of a full, resting pan; null while there is none. */
export function updateFall(before: FallMemory | null, { state, facts, runMs }: Situation): FallMemory | null {
  const { coldestPanC } = facts;
  if (state.phase.name !== 'resting' || state.water.level !== 'full' || coldestPanC === null) return null;
  if (before === null) return { sinceMs: runMs, fromC: coldestPanC, fallsKS: [] };
  const elapsedMs = runMs - before.sinceMs;
  if (elapsedMs < windowMs) return before;
  const fallKS = ((before.fromC - coldestPanC) * 1000) / elapsedMs;
  const fallsKS = [...before.fallsKS, fallKS].slice(-windowsKept);
  return { sinceMs: runMs, fromC: coldestPanC, fallsKS };
}

/** The numbers of a fall towards frost. */
interface Fall {
  readonly panC: number;
  readonly fallKH: number;
  /** Time to 1 °C at that rate [min]. */
  readonly dangerMin: number;
}

/** The fall of the resting pan when it would take it to 1 °C within twice its drain time, else null. */
export function fallToFrost(
  { facts, site, settings, readings }: Situation,
  fall: FallMemory | null,
): Fall | null {
  const { coldestPanC } = facts;
  if (fall === null || fall.fallsKS.length < windowsKept || coldestPanC === null || !canEmpty(site))
    return null;
  const airC = good(readings.ambientC);
  const mostKS = airC === null ? Number.POSITIVE_INFINITY : mostFallKS(site, coldestPanC, airC);
  const fallKS = Math.min(...fall.fallsKS, mostKS);
  if (fallKS <= 0) return null;
  const dangerS = Math.max(0, coldestPanC - dangerC) / fallKS;
  if (dangerS > drainTimes * settings.drainTimeS) return null;
  return { panC: coldestPanC, fallKH: fallKS * 3600, dangerMin: dangerS / 60 };
}

/** How fast the water of a full pan can fall by itself [K/s]. */
function mostFallKS({ pan }: Site, panC: number, airC: number): number {
  const lostWM2 = mostSkyWM2 + mostConvectionWM2K * Math.max(0, panC - airC + airErrorK);
  return lostWM2 / (pan.waterDepthM * waterJM3K);
}
