import type { Outputs } from '../../shared-types/engine.ts';
import type { Site } from '../../shared-types/site.ts';
import type { SoundInput } from './input.ts';
import { canEmpty } from './pan.ts';
import { fullSpeed } from './speed/follow-gain.ts';
import { type EngineState, noTimers, type Phase, safeOutputs, startUp, unknownWater } from './state.ts';
import { noHarvest } from './want/outlook.ts';
import { calmFlow } from './watch/memory.ts';

/**
 * True when the device's outputs may have fallen safe since the last step, unseen by the engine.
 *
 * Outputs that were safe already cannot have changed; others outlived their expiry only if the device
 * said so after it.
 */
export function isUnseen(
  { stepped, outputs }: EngineState,
  { elapsedMs, feedback }: SoundInput,
  site: Site,
): boolean {
  if (!stepped || elapsedMs === null) return true;
  const lateMs = elapsedMs - site.control.outputExpiryS * 1000;
  if (lateMs <= 0 || areSafe(outputs)) return false;
  if (feedback === null || feedback.ageMs >= lateMs) return true;
  return outputs.pumpFraction > 0 ? feedback.pumpFraction === 0 : feedback.drainOpen !== outputs.drainOpen;
}

function areSafe({ pumpFraction, drainOpen, drainPumpOn }: Outputs): boolean {
  return pumpFraction === 0 && drainOpen && !drainPumpOn;
}

/**
 * The state as it may be trusted after time that nobody saw: the outputs have fallen safe, the water in
 * the pan is unknown, readings and timers begin anew, leases have ended. Totals, alarms, doubts in sensors, a
 * frost not yet released, and a lock remain.
 */
export function restart(state: EngineState, site: Site, runMs: number): EngineState {
  return {
    ...state,
    runMs,
    stepped: true,
    sensing: {},
    watch: { ...state.watch, darkMs: null, still: {}, nightDewC: null },
    phase: phaseAfter(state.phase, site, runMs),
    water: { ...unknownWater, level: levelAfter(state.water, site), overdue: state.water.overdue },
    timers: noTimers,
    gain: null,
    harvest: { ...noHarvest, clearFraction: state.harvest.clearFraction },
    outputs: safeOutputs,
    pump: { ...state.pump, sinceMs: runMs, exercising: false },
    speed: fullSpeed,
    frost: { ...state.frost, warmMs: null, keepWarmMs: null, fall: null },
    heat: { ...state.heat, cooling: false },
    flow: { ...calmFlow, kind: state.flow.kind },
    upkeep: { ...state.upkeep, restMm: null, restFromMm: null, sheetExcessK: null },
    operator: { ...state.operator, lease: null },
    meter: { ...state.meter, rateW: null },
  };
}

/** What a person emptied by hand stays empty; all else may have run anywhere. */
function levelAfter({ level }: EngineState['water'], site: Site): EngineState['water']['level'] {
  return level === 'empty' && !canEmpty(site) ? 'empty' : 'unknown';
}

function phaseAfter({ name }: Phase, site: Site, sinceMs: number): Phase {
  if (name === 'stopped') return { name, sinceMs };
  return canEmpty(site) ? { name: 'emptying', sinceMs, cause: startUp } : { name: 'resting', sinceMs };
}
