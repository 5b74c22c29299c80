import type { Feedback } from '../../../shared-types/engine.ts';
import type { TrustedReadings } from '../../../shared-types/readings.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { heldFor } from '../blocks/hold.ts';
import { canRest } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';
import { takenSince } from './pump-signs.ts';

/** Above these shares of its rating the pump that is off runs, below they say that it stands. Design choices. */
const runsFraction = 0.2;
const standsFraction = 0.05;
/** Time that pump and device are given to stop, and that water is given to come to rest [ms]; design choices. */
const stoppingMs = 10_000;
const settlingMs = 60_000;
/** A pump that is seen to run for so long without being told does so [ms]; a design choice. */
const runsOnHoldMs = 20_000;

interface Told {
  readonly feedback: Feedback | null;
  readonly state: EngineState;
  readonly readings: TrustedReadings;
  readonly site: Site;
  readonly settings: Settings;
  readonly runMs: number;
}

/**
 * True when the pump is seen to run although it is off. Power and flow are believed before what the device
 * says: its relay may be welded while its word is still "off", or its word may be wrong.
 */
export function seenRunning(told: Told): boolean {
  const { state, readings, site } = told;
  if (state.outputs.pumpFraction > 0) return false;
  const powerW = good(takenSince(readings.pumpPowerW, told, stoppingMs));
  if (powerW !== null) return powerW >= runsFraction * site.pump.ratedPowerW;
  const flowLMin = good(takenSince(readings.flowLMin, told, settlingMs));
  // What runs back through the pump of a pan that empties that way is no sign of its turning.
  const running = canRest(site) || state.water.level === 'empty';
  if (flowLMin !== null && running && flowLMin >= runsFraction * site.pump.ratedFlowLMin) return true;
  const flowStands = flowLMin !== null && flowLMin < standsFraction * site.pump.ratedFlowLMin;
  return !flowStands && feedbackSaysRunning(told);
}

function feedbackSaysRunning({ feedback, state, settings, runMs }: Told): boolean {
  if (feedback === null || feedback.ageMs > settings.staleAfterS * 1000) return false;
  return feedback.pumpFraction > 0 && runMs - feedback.ageMs >= state.pump.sinceMs + stoppingMs;
}

/** True when the pump has been seen to run on. */
export function runsOn({ state: { flow }, runMs }: Situation): boolean {
  return heldFor(flow.runsOnMs, runMs, runsOnHoldMs);
}
