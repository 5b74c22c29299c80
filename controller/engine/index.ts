import type { Decision } from '../../shared-types/engine.ts';
import type { Outcome } from '../../shared-types/log.ts';
import { isState } from './check-state.ts';
import { broughtUp } from './older-state.ts';
import type { EngineState } from './state.ts';

export { reasonText } from './explain/reason-text.ts';
export { type Remark, settingsRemarks } from './remarks.ts';
export { type EngineState, initialState, safeOutputs } from './state.ts';
export { step, stepOn } from './step.ts';

/** Version of the rules: a log tells with it which engine decided. */
export const engineVersion = '1.4.0';

/** @returns undefined when what was saved is no state of this version nor of the two before. */
export function reviveState(saved: unknown): EngineState | undefined {
  const state = broughtUp(saved);
  return isState(state) ? state : undefined;
}

/** What of a decision is logged, and what a replay has to meet again. */
export function outcomeOf({ phase, outputs, reasons, alarms, meter, belief }: Decision): Outcome {
  const failed = Object.entries(belief.readings)
    .filter(([, reading]) => reading.quality === 'failed')
    .map(([channel]) => channel as Outcome['failed'][number]);
  return {
    phase,
    outputs,
    reasons: { phase: reasons.phase.code, pump: reasons.pump.code, drain: reasons.drain.code },
    alarms: alarms.filter((alarm) => alarm.active).map((alarm) => alarm.code),
    failed,
    total: meter.total,
  };
}
