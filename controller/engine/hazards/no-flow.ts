import { hold } from '../blocks/hold.ts';
import { isPumping, type Situation } from '../situation.ts';

/** A flow below this share of the pump's rating moves no water; a design choice. */
export const leastFlowFraction = 0.1;
/** Time that a pump is given to draw water into empty pipes [ms]; a design choice. */
const primingMs = 120_000;
/** No pump runs dry for longer than this, whatever the settings [ms]. */
const mostDryMs = 20_000;

/** Instant since which the pump may have been running dry [steady ms], counted from the step before. */
export function noFlowSince(situation: Situation): number | null {
  const { state, runMs, elapsedMs } = situation;
  return hold(state.timers.noFlowMs, isDry(situation), runMs - elapsedMs);
}

function isDry({ state, facts, site, runMs }: Situation): boolean {
  if (!isPumping(state)) return false;
  const { phase, water } = state;
  if (phase.name === 'filling' && runMs - phase.sinceMs <= primingMs) return false;
  if (phase.name === 'circulating' && water.level === 'empty') return true;
  return facts.flowLMin !== null && facts.flowLMin < leastFlowFraction * site.pump.ratedFlowLMin;
}

/** True when the pump must stop now, since the next step may come too late. */
export function hasRunDry({ state, settings, runMs, elapsedMs }: Situation): boolean {
  const sinceMs = state.timers.noFlowMs;
  if (sinceMs === null) return false;
  const dryMs = runMs - sinceMs;
  return dryMs >= settings.dryRunS * 1000 || dryMs + elapsedMs > mostDryMs;
}
