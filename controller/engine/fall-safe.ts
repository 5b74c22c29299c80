import type { Decision } from '../../shared-types/engine.ts';
import { listAlarms } from './alarms/list.ts';
import { isState } from './check-state.ts';
import { tellCommission } from './commission/tell.ts';
import { alarmText } from './explain/alarm-text.ts';
import { answerText } from './explain/answer-text.ts';
import { reason } from './explain/reasons.ts';
import { loose, type SoundInput } from './input.ts';
import { since } from './meter/totals.ts';
import { pairOffset } from './pair/uncertainty.ts';
import { type AlarmMemory, type EngineState, initialState, safeOutputs } from './state.ts';

/**
 * What is decided when the engine itself failed: safe outputs, and a restart at the next step.
 *
 * Totals and alarms go on where the state before can be read at all.
 */
export function fallSafe(given: unknown, input: SoundInput): { state: EngineState; decision: Decision } {
  const before = isState(given) ? given : initialState();
  const runMs = before.runMs + (input.elapsedMs ?? 0);
  const state: EngineState = {
    ...before,
    runMs,
    stepped: false,
    outputs: safeOutputs,
    alarms: {
      ...before.alarms,
      'internal-error': raised(before.alarms['internal-error'], runMs, input.nowMs),
    },
  };
  return { state, decision: safeDecision(state, input) };
}

function raised(before: AlarmMemory | undefined, runMs: number, nowMs: number): AlarmMemory {
  if (before?.active === true) return { ...before, changingMs: null };
  return {
    changingMs: null,
    active: true,
    acknowledged: false,
    raisedMs: nowMs,
    activeSinceMs: runMs,
    returnedMs: before?.returnedMs ?? null,
    repeats: before?.repeats ?? 0,
    head: null,
    shelvedUntilMs: before?.shelvedUntilMs ?? null,
    shelvedUntilUtcMs: before?.shelvedUntilUtcMs ?? null,
    values: {},
    text: alarmText('internal-error', {}),
  };
}

function safeDecision(
  { phase, meter, alarms, runMs, commission, learnt }: EngineState,
  { nowMs, request }: SoundInput,
): Decision {
  const why = reason({ code: 'internal-error', values: {} });
  const { id } = loose(request);
  return {
    nowMs,
    phase: phase.name === 'stopped' ? 'stopped' : 'emptying',
    phaseForMs: Math.max(0, runMs - phase.sinceMs),
    outputs: safeOutputs,
    reasons: { phase: why, pump: why, drain: why },
    lease: null,
    alarms: listAlarms(alarms),
    meter: {
      total: meter.total,
      today: since(meter.total, meter.dayStart),
      heatRateW: null,
      flowLMin: null,
      estimated: true,
      errorFraction: null,
      estimatedJ: meter.estimatedJ,
    },
    belief: {
      readings: {},
      water: 'unknown',
      flowProven: false,
      differenceK: null,
      pair: pairOffset(learnt),
      netGainW: null,
      dayPromiseJ: null,
      heatAtStakeJ: null,
      timeToFreezingS: null,
    },
    commissioning: tellCommission(commission),
    learnt,
    answer:
      request === null
        ? null
        : {
            id: typeof id === 'string' ? id : '',
            accepted: false,
            code: 'not-possible-here',
            text: answerText('not-possible-here'),
          },
  };
}
