import { minuteMs } from './minutes.ts';
import { settledPhases } from './phases.ts';
import type { SkyColumns } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';

/** Pan and store bottom as a thermometer shows them; not a number where none does. */
export interface Seen {
  readonly panC: number;
  readonly bottomC: number;
}

/** What is not known of the sky: by what its sun is multiplied, and by how much the air is warmer [K]. */
export interface Unknowns {
  readonly factor: number;
  readonly airK: number;
}

export const nothingUnknown: Unknowns = { factor: 1, airK: 0 };

/** How freely they walk from window to window: standard deviations; 0 for what is known. */
export interface Steps {
  readonly factor: number;
  readonly airK: number;
}

interface Attempted {
  readonly span: LoggedSpan;
  readonly unknowns: Unknowns;
  readonly seen: Seen;
  /** What the plant would show at the end of the window. */
  readonly attempt: (unknowns: Unknowns, drawnKgS: number) => Seen;
}

interface SkyTask extends Attempted {
  readonly sky: SkyColumns;
  readonly from: number;
  readonly to: number;
  readonly steps: Steps;
}

export interface Corrected {
  readonly unknowns: Unknowns;
  /** How unlikely what was seen is by what was expected: twice the negative logarithm of its likelihood. */
  readonly unlikely: number;
}

/** What a thermometer and the plant may part by in a window without any meaning [K]. Design choices. */
const panSdK = 0.15;
const bottomSdK = 0.1;
/** Below this the sun is too low to be told from the rest [W/m2]. */
const leastLightWM2 = 20;
const triedFactor = 0.1;
const triedAirK = 1;
const mostFactor = 1.6;
const mostAirK = 12;

/**
 * Sun and air with which the pan goes where it was seen: one step of a Kalman filter whose unknowns walk. What the sun
 * would have to be below nought is the air's. While water is on the move, both stay as they were.
 */
export function correctSky(task: SkyTask): Corrected {
  const { sky, from, to, unknowns, steps, seen, attempt } = task;
  const unchanged = { unknowns, unlikely: 0 };
  const lit = (sky.irradianceWM2[(from + to) >> 1] as number) >= leastLightWM2;
  const factorSd = lit ? steps.factor : 0;
  if ((factorSd === 0 && steps.airK === 0) || Number.isNaN(seen.panC) || !steady(task)) return unchanged;
  const { factor, airK } = unknowns;
  const usualC = attempt(unknowns, 0).panC;
  const bySun = lit
    ? (attempt({ ...unknowns, factor: factor + triedFactor }, 0).panC - usualC) / triedFactor
    : 0;
  const byAir =
    steps.airK === 0 ? 0 : (attempt({ ...unknowns, airK: airK + triedAirK }, 0).panC - usualC) / triedAirK;
  const missingK = seen.panC - usualC;
  const variance = panSdK ** 2 + (factorSd * bySun) ** 2 + (steps.airK * byAir) ** 2;
  const wantedFactor = factor + (factorSd ** 2 * bySun * missingK) / variance;
  const nextFactor = Math.min(mostFactor, Math.max(0, wantedFactor));
  // What the sun cannot take is left over for the air.
  const leftK = wantedFactor < 0 && byAir > leastByAir ? (wantedFactor * bySun) / byAir : 0;
  const nextAirK = airK + (steps.airK ** 2 * byAir * missingK) / variance + leftK;
  return {
    unknowns: { factor: nextFactor, airK: Math.min(mostAirK, Math.max(-mostAirK, nextAirK)) },
    unlikely: missingK ** 2 / variance + Math.log(variance),
  };
}

/** An answer of the pan to the air that is worth anything [K/K]. */
const leastByAir = 0.02;

/** Minutes before a window in which nothing may have changed either. */
const before = 5;

/** The same phase all through the window, and one in which the pan is either full or empty. */
function steady({ span, from, to }: SkyTask): boolean {
  const { fromMs } = span.minutes;
  const startMs = fromMs + (from - before) * minuteMs;
  const phase = span.phases.findLast((begun) => begun.fromMs <= startMs)?.phase;
  const changes = span.phases.some(
    (begun) => begun.fromMs > startMs && begun.fromMs <= fromMs + to * minuteMs,
  );
  return !changes && phase !== undefined && settledPhases.includes(phase);
}

/** Shares of the store's volume in an hour that are tried as draws, coarse first and then around the best. */
const triedShares = [0.01, 0.03, 0.08, 0.2, 0.5] as const;
const finerBy = [0.6, 0.8, 1.25, 1.6] as const;
/** One that is drawn at all is usually small. */
const usualShare = 0.15;

/**
 * Water at the tap with which the store bottom goes where it was seen [kg/s], 0 or more. Only cold water that comes
 * in makes a bottom colder than loop and losses do. Much water has to explain much: where the bottom is as cold as
 * what comes in, any draw would do, and the least is taken.
 */
export function correctDraw({ span, unknowns, seen, attempt }: Attempted): number {
  if (Number.isNaN(seen.bottomC)) return 0;
  const kgS = (share: number) => (share * span.site.store.volumeL) / 3600;
  const apartK = (share: number) => attempt(unknowns, kgS(share)).bottomC - seen.bottomC;
  const withoutK = apartK(0);
  if (withoutK < bottomSdK) return 0;
  let best = 0;
  let least = (withoutK / bottomSdK) ** 2;
  const look = (share: number) => {
    const here = (apartK(share) / bottomSdK) ** 2 + (share / usualShare) ** 2;
    if (here < least) [best, least] = [share, here];
  };
  for (const share of triedShares) look(share);
  const around = best;
  if (around > 0) for (const by of finerBy) look(around * by);
  return kgS(best);
}
