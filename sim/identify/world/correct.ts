import { minuteMs } from './minutes.ts';
import type { SkyColumns } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';

/** Pan and store bottom as a thermometer shows them; not a number where none does. */
export interface Seen {
  readonly panC: number;
  readonly bottomC: number;
}

interface Attempted {
  readonly span: LoggedSpan;
  readonly factor: number;
  readonly seen: Seen;
  /** What the plant would show at the end of the window. */
  readonly attempt: (factor: number, drawnKgS: number) => Seen;
}

interface FactorTask extends Attempted {
  readonly sky: SkyColumns;
  readonly from: number;
  readonly to: number;
  readonly factorStep: number;
}

/** What a thermometer and the plant may part by in a window without any meaning [K]. Design choices. */
const panSdK = 0.15;
const bottomSdK = 0.1;
/** Below this the sun is too low to be told from the rest [W/m2]. */
const leastLightWM2 = 20;
const triedStep = 0.1;
const mostFactor = 1.6;

/**
 * The sun's factor with which the pan goes where it was seen: one step of a filter whose walk has a standard
 * deviation of `factorStep`. In the dark, and while water is on the move, the factor stays as it was.
 */
export function correctFactor(task: FactorTask): number {
  const { sky, from, to, factor, factorStep, seen, attempt } = task;
  const light = sky.irradianceWM2[(from + to) >> 1] as number;
  if (factorStep === 0 || light < leastLightWM2 || Number.isNaN(seen.panC) || !steady(task)) return factor;
  const usual = attempt(factor, 0).panC;
  const slope = (attempt(factor + triedStep, 0).panC - usual) / triedStep;
  const weight = slope / (slope ** 2 + (panSdK / factorStep) ** 2);
  return Math.min(mostFactor, Math.max(0, factor + weight * (seen.panC - usual)));
}

/** The same phase all through the window, and one in which the pan is either full or empty. */
function steady({ span, from, to }: FactorTask): boolean {
  const { fromMs } = span.minutes;
  const startMs = fromMs + (from - windowBefore) * minuteMs;
  const phase = span.phases.findLast((begun) => begun.fromMs <= startMs)?.phase;
  const changes = span.phases.some(
    (begun) => begun.fromMs > startMs && begun.fromMs <= fromMs + to * minuteMs,
  );
  return !changes && (phase === 'empty' || phase === 'resting' || phase === 'circulating');
}

/** Minutes before a window in which nothing may have changed either. */
const windowBefore = 5;

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
export function correctDraw({ span, factor, seen, attempt }: Attempted): number {
  if (Number.isNaN(seen.bottomC)) return 0;
  const kgS = (share: number) => (share * span.site.store.volumeL) / 3600;
  const apartK = (share: number) => attempt(factor, kgS(share)).bottomC - seen.bottomC;
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
