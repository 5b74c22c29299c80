import type { Decision, EngineInput } from '../../shared-types/engine.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { updateAlarms } from './alarms/life.ts';
import { listAlarms } from './alarms/list.ts';
import { arbitrate, type HazardCommand, hazardCommand } from './arbitrate.ts';
import { beliefOf } from './belief.ts';
import { isState } from './check-state.ts';
import { reasonsOf } from './explain/reasons.ts';
import { countFailure, forgiveFailure } from './failure.ts';
import { fallSafe } from './fall-safe.ts';
import { updateFrost } from './hazards/frost.ts';
import { updateHeat } from './hazards/heat.ts';
import { keepWarmSince } from './hazards/keep-warm.ts';
import { failuresToLock } from './hazards/table.ts';
import { readInput, type SoundInput } from './input.ts';
import { type HeatReading, readHeat } from './meter/heat-rate.ts';
import { addMove, addUse, meanFillStore, since, waterAfterMove } from './meter/totals.ts';
import { hear } from './operator/hear.ts';
import { assertSafe, outputsOf } from './outputs.ts';
import { isUnseen, restart } from './restart.ts';
import { drainSaysOf } from './sense/drain-says.ts';
import { factsOf } from './sense/facts.ts';
import { updateWater } from './sense/pan-water.ts';
import { sense } from './sense/sense.ts';
import { advance, type Move } from './sequence/advance.ts';
import { recentStarts } from './sequence/least-times.ts';
import { type Command, isPumping, type Situation } from './situation.ts';
import type { EngineState } from './state.ts';
import { updateGain, updateTimers } from './want/timers.ts';
import { updateTrend } from './want/trend.ts';

export interface Stepped {
  readonly state: EngineState;
  readonly decision: Decision;
}

/**
 * One step of control. Pure: the same arguments give the same result, and none is changed.
 *
 * @param state - What the step before returned, or `initialState()`.
 * @param input - `elapsedMs` null, or longer than the outputs lived at the device, makes it a restart.
 * @returns Never throws for a checked site and settings: a state or an input that is no such thing
 * gives safe outputs, with the reason `internal-error` where the engine itself failed.
 */
export function step(state: EngineState, input: EngineInput, site: Site, settings: Settings): Stepped {
  const sound = readInput(input);
  try {
    if (!isState(state)) throw new Error('not a state');
    return decide(state, sound, site, settings);
  } catch {
    return fallSafe(state, sound);
  }
}

function decide(state: EngineState, input: SoundInput, site: Site, settings: Settings): Stepped {
  const sensed = senseAll(state, input, site, settings);
  const heat = readHeat(sensed);
  const judged = judge(sensed, heat);
  const seen = hazardCommand(judged);
  const { slots, answer } = hear(input.request, judged, input.nowMs, seen);
  const asked: Situation = { ...judged, state: { ...judged.state, ...slots } };
  // What an operator asks may lift a lock, and nothing else that a protection says.
  const hazard = slots.failure === judged.state.failure ? seen : hazardCommand(asked);
  const failure = countFailure(slots.failure, hazard);
  const heard: Situation = { ...asked, state: { ...asked.state, failure } };
  const move = advance(heard, lockOr(arbitrate(heard, hazard), hazard, failure.count));
  const moved = carryOut(heard, move, hazard);
  const ground = { ...moved, feedback: input.feedback, outputsBefore: judged.state.outputs };
  const alarms = updateAlarms(moved.state.alarms, ground, input.nowMs);
  const after: Situation = { ...moved, state: { ...moved.state, alarms } };
  return { state: after.state, decision: { ...tell(after, move, heat, input.nowMs), answer } };
}

/** Brings the state up to this instant: time, day, readings, water. */
function senseAll(before: EngineState, input: SoundInput, site: Site, settings: Settings): Situation {
  const { elapsedMs, readings: raw } = input;
  const runMs = before.runMs + (elapsedMs ?? 0);
  const unseen = isUnseen(before, input, site);
  const state = unseen ? restart(before, site, runMs) : before;
  const passedMs = unseen ? 0 : (elapsedMs ?? 0);
  const { readings, sensing } = sense(raw, state.sensing, site, settings, runMs);
  const facts = factsOf(readings);
  const drainSays = drainSaysOf(input.feedback, state, site, settings, runMs);
  const localDay = input.localDay ?? state.localDay;
  const { phase, meter } = state;
  const water = updateWater(state.water, {
    levelMm: facts.levelMm,
    drainSays,
    phase,
    elapsedMs: passedMs,
    site,
    settings,
  });
  const dayStart = localDay === state.localDay ? meter.dayStart : meter.total;
  return {
    state: { ...state, runMs, localDay, sensing, water, meter: { ...meter, dayStart } },
    runMs,
    elapsedMs: passedMs,
    localDay,
    readings,
    facts,
    drainSays,
    site,
    settings,
  };
}

/** Brings the memories of hazards, wants and the meter up to this step. */
function judge(situation: Situation, heat: HeatReading): Situation {
  const { state, facts, site, settings, runMs } = situation;
  const water = { ...state.water, ...meanFillStore(situation), trendC: updateTrend(situation) };
  const frost = updateFrost(state.frost, facts, settings, runMs);
  const trended: Situation = { ...situation, state: { ...state, water, frost } };
  return {
    ...situation,
    state: {
      ...state,
      water,
      timers: updateTimers(trended),
      gain: updateGain(trended),
      frost: { ...frost, keepWarmMs: keepWarmSince(trended) },
      heat: updateHeat(state.heat, facts, site, settings),
      meter: addUse(state.meter, heat.rateW, situation),
    },
  };
}

/** A failure that is one too many locks the loop at once. */
function lockOr(command: Command, hazard: HazardCommand | null, failures: number): Command {
  const locks = hazard?.hazard.fails !== undefined && failures >= failuresToLock;
  return locks ? { ...command, goal: 'lock' } : command;
}

function carryOut(situation: Situation, move: Move, hazard: HazardCommand | null): Situation {
  const { state, site, settings, runMs } = situation;
  const { phase } = move;
  const water = waterAfterMove(state.water, situation, move);
  const outputs = outputsOf(phase, water, site, settings.drainTimeS);
  assertSafe(outputs, site);
  return {
    ...situation,
    state: {
      ...state,
      phase,
      water,
      outputs,
      pump: pumpAfter(state, phase, runMs),
      failure: forgiveFailure(state.failure, situation, move, hazard),
      meter: addMove(state.meter, situation, move),
    },
  };
}

function pumpAfter(state: EngineState, phase: EngineState['phase'], runMs: number): EngineState['pump'] {
  const pumping = isPumping({ phase });
  if (pumping === isPumping(state)) return state.pump;
  const { startsMs } = state.pump;
  return { sinceMs: runMs, startsMs: pumping ? [...recentStarts(startsMs, runMs), runMs] : startsMs };
}

function tell(situation: Situation, move: Move, heat: HeatReading, nowMs: number): Omit<Decision, 'answer'> {
  const { state, site, runMs } = situation;
  const { phase, outputs, meter, operator } = state;
  const { lease } = operator;
  return {
    nowMs,
    phase: phase.name,
    phaseForMs: runMs - phase.sinceMs,
    outputs,
    reasons: reasonsOf(move, site, outputs),
    lease: lease === null ? null : { kind: lease.kind, remainingMs: lease.untilMs - runMs },
    alarms: listAlarms(state.alarms),
    meter: {
      total: meter.total,
      today: since(meter.total, meter.dayStart),
      heatRateW: heat.rateW,
      flowLMin: heat.flowLMin,
      estimated: heat.estimated,
    },
    belief: beliefOf(situation, heat.rateW),
  };
}
