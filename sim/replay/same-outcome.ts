import type { Decision } from '../../shared-types/engine.ts';
import type { Outcome } from '../../shared-types/log.ts';

/**
 * True when a decision is to the last bit the one that was logged: `differingFields` would name nothing.
 * Builds nothing, since nearly every step of a replay is the same.
 */
export function sameOutcome(logged: Outcome, decision: Decision): boolean {
  return (
    logged.phase === decision.phase &&
    sameOutputs(logged.outputs, decision.outputs) &&
    logged.reasons.phase === decision.reasons.phase.code &&
    logged.reasons.pump === decision.reasons.pump.code &&
    logged.reasons.drain === decision.reasons.drain.code &&
    sameTotals(logged.total, decision.meter.total) &&
    sameAlarms(logged.alarms, decision.alarms) &&
    sameFailed(logged.failed, decision.belief.readings)
  );
}

function sameOutputs(a: Outcome['outputs'], b: Outcome['outputs']): boolean {
  return (
    Object.is(a.pumpFraction, b.pumpFraction) &&
    a.drainOpen === b.drainOpen &&
    a.drainPumpOn === b.drainPumpOn &&
    a.exchangerPumpOn === b.exchangerPumpOn &&
    a.heatDumpOn === b.heatDumpOn
  );
}

function sameTotals(a: Outcome['total'], b: Outcome['total']): boolean {
  return (
    Object.is(a.heatHomeJ, b.heatHomeJ) &&
    Object.is(a.heatLostJ, b.heatLostJ) &&
    Object.is(a.electricityJ, b.electricityJ) &&
    Object.is(a.pumpRunS, b.pumpRunS) &&
    Object.is(a.starts, b.starts) &&
    Object.is(a.fills, b.fills)
  );
}

function sameAlarms(logged: Outcome['alarms'], alarms: Decision['alarms']): boolean {
  let met = 0;
  for (const { active, code } of alarms) {
    if (!active) continue;
    if (logged[met] !== code) return false;
    met++;
  }
  return met === logged.length;
}

function sameFailed(logged: Outcome['failed'], readings: Decision['belief']['readings']): boolean {
  let met = 0;
  for (const channel in readings) {
    if (readings[channel as Outcome['failed'][number]]?.quality !== 'failed') continue;
    if (logged[met] !== channel) return false;
    met++;
  }
  return met === logged.length;
}
