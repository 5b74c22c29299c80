import { hold } from '../blocks/hold.ts';
import { good } from '../sense/facts.ts';
import { isPumping, type Situation } from '../situation.ts';
import { leastFlowLMin, powerSays, takenSince } from '../watch/pump-signs.ts';

/** Time that a pump is given to draw water into empty pipes, as long as the loop never showed less [ms]. */
const primingMs = 120_000;
/** What a pump that needs time is given over what it needed, and at least [times, ms]; design choices. */
const primingTimes = 3;
const primingMarginMs = 10_000;
/** Water that comes within this share of the dry running time needs no time of its own; a design choice. */
const promptFraction = 1 / 3;
/** No pump runs dry for longer than this, whatever the settings [ms]. */
const mostDryMs = 20_000;

/** Instant since which the pump may have been running dry [steady ms], counted from the step before. */
export function noFlowSince(situation: Situation): number | null {
  const { state, runMs, elapsedMs } = situation;
  return hold(state.timers.noFlowMs, isDry(situation), runMs - elapsedMs);
}

function isDry(situation: Situation): boolean {
  const { state, readings } = situation;
  if (!isPumping(state)) return false;
  if (state.phase.name === 'circulating' && state.water.level === 'empty') return true;
  const flow = takenSince(readings.flowLMin, situation);
  const leastLMin = leastFlowLMin(situation);
  if ((good(flow) ?? -1) >= leastLMin) return false;
  const power = powerSays(situation);
  // A pump without power needs no time to draw water.
  if (power === 'none') return true;
  if (isPriming(situation)) return false;
  return power === 'low' || (flow !== undefined && flow.value < leastLMin);
}

/** True while a filling pump may yet be drawing its water. */
function isPriming({ state, settings, runMs }: Situation): boolean {
  const { phase, learnt } = state;
  if (phase.name !== 'filling') return false;
  const { primingS } = learnt;
  const givenMs =
    primingS === undefined
      ? primingMs
      : primingS <= promptFraction * settings.dryRunS
        ? 0
        : Math.min(primingMs, primingTimes * primingS * 1000 + primingMarginMs);
  return runMs - phase.sinceMs <= givenMs;
}

/** True when the pump must stop now, since the next step may come too late. */
export function hasRunDry({ state, settings, runMs, elapsedMs }: Situation): boolean {
  const sinceMs = state.timers.noFlowMs;
  if (sinceMs === null) return false;
  const dryMs = runMs - sinceMs;
  return dryMs >= settings.dryRunS * 1000 || dryMs + elapsedMs > mostDryMs;
}
