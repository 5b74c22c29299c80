import type { EngineState } from '../../../controller/engine/index.ts';

/** Times are told apart by this [ms]: longer than every delay of the explored settings. */
const longMs = 20_000;
/** So many failures lock; more are no other condition. */
const mostFailures = 2;

/**
 * The condition of the machine as a short text: phase, water, latches, lease, failures, and of each time whether it
 * does not run, runs shortly or for long. Temperatures, sums, learnt numbers and what is read anew at every step are
 * left out.
 */
export function keyOf(state: EngineState): string {
  const { phase, water, timers, frost, heat, failure, operator, runMs } = state;
  const age = (sinceMs: number | null) => ageOf(sinceMs, runMs);
  return [
    phase.name,
    age(phase.sinceMs),
    'afterFill' in phase ? phase.afterFill : 'afterNoGain' in phase ? phase.afterNoGain : '',
    water.level,
    water.overdue,
    age(runMs - water.emptyingMs),
    ...Object.values(timers).map(age),
    frost.latched,
    frost.warmMs === null,
    frost.keepWarmMs === null,
    heat.storeFull,
    heat.linerHot,
    Math.min(mostFailures, failure.count),
    operator.lease === null,
  ].join(' ');
}

function ageOf(sinceMs: number | null, runMs: number): string {
  if (sinceMs === null) return '-';
  return runMs - sinceMs < longMs ? 'short' : 'long';
}
