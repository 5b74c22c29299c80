import type { Engine, EngineState } from '../../controller/daemon/engine.ts';
import type { Decision, EngineInput, Outputs } from '../../shared-types/engine.ts';
import type { Settings } from '../../shared-types/settings.ts';
import { noTotals } from './log-records.ts';

interface FakeState {
  readonly heatJ: number;
  readonly steps: number;
}

export const fakeSafeOutputs: Outputs = {
  pumpFraction: 0,
  drainOpen: true,
  drainPumpOn: false,
  exchangerPumpOn: false,
};

/**
 * An engine whose arithmetic a test can do in its head: each step adds the elapsed time times the start
 * difference to the heat, and accepts every request.
 */
export function fakeEngine(changes: Partial<Engine> = {}): Engine {
  return {
    engineVersion: 'fake 1',
    safeOutputs: fakeSafeOutputs,
    initialState: () => asState({ heatJ: 0, steps: 0 }),
    reviveState: (saved) => (isFakeState(saved) ? asState(saved) : undefined),
    step(state, input, _site, settings) {
      const next = after(state as unknown as FakeState, input, settings);
      return { state: asState(next), decision: fakeDecision(input, next.heatJ) };
    },
    outcomeOf: ({ phase, outputs, reasons, alarms, meter }) => ({
      phase,
      outputs,
      reasons: { phase: reasons.phase.code, pump: reasons.pump.code, drain: reasons.drain.code },
      alarms: alarms.map(({ code }) => code),
      failed: [],
      total: meter.total,
    }),
    ...changes,
  };
}

/** Heat that a state of the fake engine has counted [J]. */
export const fakeHeatJ = (state: unknown) => (state as FakeState).heatJ;

const asState = (state: FakeState) => state as unknown as EngineState;

function after(state: FakeState, { elapsedMs }: EngineInput, settings: Settings): FakeState {
  return { heatJ: state.heatJ + (elapsedMs ?? 0) * settings.startDifferenceK, steps: state.steps + 1 };
}

function isFakeState(saved: unknown): saved is FakeState {
  return typeof saved === 'object' && saved !== null && 'heatJ' in saved;
}

/** A decision to circulate, with what is given changed. */
export function fakeDecision(
  input: EngineInput,
  heatHomeJ: number,
  changes: Partial<Decision> = {},
): Decision {
  const reason = { code: 'circulating-for-heat', values: { differenceK: 8 }, text: 'It is warm.' } as const;
  const total = { ...noTotals, heatHomeJ };
  return {
    nowMs: input.nowMs,
    phase: 'circulating',
    phaseForMs: 0,
    outputs: { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false },
    reasons: { phase: reason, pump: reason, drain: reason },
    lease: null,
    alarms: [],
    meter: {
      total,
      today: total,
      heatRateW: null,
      flowLMin: null,
      estimated: false,
      errorFraction: null,
      estimatedJ: 0,
    },
    belief: {
      readings: {},
      water: 'unknown',
      flowProven: false,
      differenceK: null,
      pair: { offsetK: 0, sdK: 1 },
      netGainW: null,
      heatAtStakeJ: null,
      dayPromiseJ: null,
      timeToFreezingS: null,
    },
    commissioning: null,
    learnt: {},
    answer:
      input.request === null
        ? null
        : { id: input.request.id, accepted: true, code: 'accepted', text: `aged ${input.request.ageMs}` },
    ...changes,
  };
}
