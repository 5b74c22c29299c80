import type { Decision, EngineInput, Feedback } from '../../shared-types/engine.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { updateAlarms } from './alarms/life.ts';
import { listAlarms } from './alarms/list.ts';
import { arbitrate, type HazardCommand, hazardCommand } from './arbitrate.ts';
import { beliefOf } from './belief.ts';
import { hold } from './blocks/hold.ts';
import { isState } from './check-state.ts';
import { updateCommission } from './commission/run.ts';
import { tellCommission } from './commission/tell.ts';
import { exchangerRuns } from './exchanger.ts';
import { reasonsOf } from './explain/reasons.ts';
import { countFailure, forgiveFailure } from './failure.ts';
import { fallSafe } from './fall-safe.ts';
import { updateAirLows } from './hazards/air-lows.ts';
import { updateFrost } from './hazards/frost.ts';
import { updateHeat } from './hazards/heat.ts';
import { heatDumpRuns } from './hazards/heat-dump.ts';
import { updateKeepWarm } from './hazards/keep-warm.ts';
import { failuresToLock } from './hazards/table.ts';
import { readInput, type SoundInput } from './input.ts';
import { withLearnt } from './learnt.ts';
import { compareEnds, learnEnds, withNight } from './meter/ends-offset.ts';
import { type HeatReading, readHeat } from './meter/heat-rate.ts';
import { addMove, addUse, beginDay, meanFillStore, since, waterAfterMove } from './meter/totals.ts';
import { hear } from './operator/hear.ts';
import { assertSafe, outputsOf, withHeatDump } from './outputs.ts';
import { learnPair } from './pair/learn.ts';
import { isUnseen, restart } from './restart.ts';
import { withDoubts } from './sense/doubt/apply.ts';
import { updateWatch } from './sense/doubt/watch.ts';
import { drainSaysOf } from './sense/drain-says.ts';
import { factsOf } from './sense/facts.ts';
import { updateWater } from './sense/pan-water.ts';
import { sense } from './sense/sense.ts';
import { advance, type Move } from './sequence/advance.ts';
import { recentStarts } from './sequence/least-times.ts';
import { type Command, isPumping, type Situation, withState } from './situation.ts';
import { followGain } from './speed/follow-gain.ts';
import type { EngineState } from './state.ts';
import { updateSunClock } from './sun/clock.ts';
import { sunHeightDeg } from './sun/position.ts';
import { netGainW } from './want/net-gain.ts';
import { newHarvestDay, updateHarvest } from './want/outlook.ts';
import { updateGain, updateTimers } from './want/timers.ts';
import { updateTrend } from './want/trend.ts';
import { seenRunning } from './watch/runs-on.ts';
import { watch } from './watch/update.ts';

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
  return run(state, input, site, settings, isState);
}

/**
 * The same step from a state that the engine has just returned in this very process, which need not be looked
 * at again: for simulations and replays, which take thousands of steps in a row.
 */
export function stepOn(own: EngineState, input: EngineInput, site: Site, settings: Settings): Stepped {
  return run(own, input, site, settings, asGiven);
}

const asGiven = () => true;

function run(
  state: EngineState,
  input: EngineInput,
  site: Site,
  settings: Settings,
  check: (state: EngineState) => boolean,
): Stepped {
  const sound = readInput(input);
  try {
    return check(state) ? decide(state, sound, site, settings) : fallSafe(state, sound);
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
  const asked = withSlots(judged, slots);
  // What an operator asks may lift a lock, and nothing else that a protection says.
  const hazard = slots.failure === judged.state.failure ? seen : hazardCommand(asked);
  const failure = countFailure(slots.failure, hazard);
  const heard = withSlots(asked, { ...slots, failure });
  const command = lockOr(arbitrate(heard, hazard), hazard, failure.count);
  const move = advance(heard, command);
  const after = carryOut(heard, move, command, hazard, input);
  return { state: after.state, decision: tell(after, move, heat, input.nowMs, answer) };
}

/** Brings the state up to this instant: time, day, readings, water, frost. */
function senseAll(given: EngineState, input: SoundInput, site: Site, asSet: Settings): Situation {
  const settings = withLearnt(asSet, given.learnt);
  const passedMs = input.elapsedMs ?? 0;
  const runMs = given.runMs + passedMs;
  const unseen = isUnseen(given, input, site);
  const before = unseen ? restart(given, site, runMs) : given;
  const elapsedMs = unseen ? 0 : passedMs;
  const sensed = sense(input.readings, before.sensing, site, settings, runMs);
  const { sensing } = sensed;
  const readings = withDoubts(sensed.readings, before.watch, runMs);
  const facts = factsOf(readings, before.learnt);
  const drainSays = drainSaysOf(input.feedback, before, site, settings, runMs);
  const localDay = input.localDay ?? before.localDay;
  const sunClock = updateSunClock(before.sunClock, input.nowMs, unseen ? null : elapsedMs, runMs);
  const height = sunClock.atMs === null ? null : sunHeightDeg(sunClock.atMs, site.location);
  const { phase } = before;
  const { levelMm } = facts;
  const told = { feedback: input.feedback, state: before, readings, site, settings, runMs };
  const runsOnMs = hold(before.flow.runsOnMs, seenRunning(told), runMs);
  const pumpRuns = runsOnMs !== null;
  const evidence = { levelMm, drainSays, pumpRuns, phase, elapsedMs, site, settings };
  const seenWater = updateWater(before.water, evidence);
  const filledWater = meanFillStore(seenWater, phase, readings, elapsedMs, site);
  const state: EngineState = {
    ...before,
    runMs,
    localDay,
    sunClock,
    sensing,
    water: updateTrend(filledWater, facts, elapsedMs),
    airLows: updateAirLows(before.airLows, readings, site, localDay !== before.localDay),
    flow: runsOnMs === before.flow.runsOnMs ? before.flow : { ...before.flow, runsOnMs },
    harvest: localDay === before.localDay ? before.harvest : { ...before.harvest, ...newHarvestDay },
    meter: localDay === before.localDay ? before.meter : beginDay(before.meter),
  };
  return {
    state,
    runMs,
    elapsedMs,
    localDay,
    sunHeightDeg: height,
    readings,
    facts,
    drainSays,
    site,
    settings,
  };
}

/** Brings the memories of hazards, wants and the meter up to this step. */
function judge(situation: Situation, heat: HeatReading): Situation {
  const harvest = updateHarvest(situation, netGainW(situation, heat.rateW));
  const weighed = withState(situation, { ...situation.state, harvest });
  return withMemories(weighed, heat);
}

function withMemories(situation: Situation, heat: HeatReading): Situation {
  const { state } = situation;
  const night = compareEnds(state.meter.night, situation);
  const judged = withState(situation, {
    ...state,
    watch: updateWatch(situation),
    learnt: learnEnds(learnPair(situation), state.meter.night, night),
    timers: updateTimers(situation, heat),
    gain: updateGain(situation),
    frost: updateKeepWarm(situation, updateFrost(situation)),
    heat: updateHeat(situation),
    meter: withNight(addUse(state.meter, heat, situation), night),
  });
  return watch(judged);
}

/** The situation with what an operator or a failure may have changed in it. */
function withSlots(
  situation: Situation,
  { operator, alarms, failure, water }: Pick<EngineState, 'operator' | 'alarms' | 'failure' | 'water'>,
): Situation {
  const { state } = situation;
  // Whatever a request changes, it is itself remembered among the requests.
  const same = operator === state.operator && failure === state.failure;
  return same ? situation : withState(situation, { ...state, operator, alarms, failure, water });
}

/** A failure that is one too many locks the loop at once. */
function lockOr(command: Command, hazard: HazardCommand | null, failures: number): Command {
  const locks = hazard?.hazard.fails !== undefined && failures >= failuresToLock;
  return locks ? { ...command, goal: 'lock' } : command;
}

function carryOut(
  situation: Situation,
  move: Move,
  command: Command,
  hazard: HazardCommand | null,
  { nowMs, feedback }: SoundInput,
): Situation {
  const { state, site, settings, runMs } = situation;
  const { phase } = move;
  const water = waterAfterMove(state.water, situation, move);
  const dumps = heatDumpRuns(situation, phase, command);
  const circulating = phase.name === 'circulating';
  const exchanges =
    command.cause.code !== 'dumping-heat' && exchangerRuns(situation, circulating, hazard !== null);
  const speed = site.pump.speedControl
    ? followGain(state.speed, withState(situation, { ...state, phase }), command)
    : state.speed;
  const driven = outputsOf(phase, water, site, settings.drainTimeS, speed.fraction, exchanges);
  const outputs = withHeatDump(driven, site, dumps);
  assertSafe(outputs, site);
  const moved = withState(situation, {
    ...state,
    phase,
    water,
    outputs,
    pump: pumpAfter(state, move, runMs),
    speed,
    failure: forgiveFailure(state.failure, situation, move, hazard),
    meter: addMove(state.meter, situation, move),
  });
  const commissioned = withCommission(moved, hazard !== null, feedback);
  const ground = { situation: commissioned, feedback, outputsBefore: state.outputs };
  const alarms = updateAlarms(state.alarms, ground, nowMs);
  return alarms === commissioned.state.alarms
    ? commissioned
    : withState(commissioned, { ...commissioned.state, alarms });
}

function withCommission(situation: Situation, hazard: boolean, feedback: Feedback | null): Situation {
  const { state } = situation;
  const slots = updateCommission(situation, hazard, feedback);
  if (slots === state) return situation;
  const { commission, operator, learnt } = slots;
  return withState(situation, { ...state, commission, operator, learnt });
}

function pumpAfter(state: EngineState, { phase, cause }: Move, runMs: number): EngineState['pump'] {
  const pumping = isPumping({ phase });
  if (pumping === isPumping(state)) return state.pump;
  const { startsMs } = state.pump;
  const exercising = pumping && cause.code === 'exercising-pump';
  return {
    sinceMs: runMs,
    startsMs: pumping ? [...recentStarts(startsMs, runMs), runMs] : startsMs,
    exercising,
  };
}

function tell(
  situation: Situation,
  move: Move,
  heat: HeatReading,
  nowMs: number,
  answer: Decision['answer'],
): Decision {
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
      errorFraction: heat.errorFraction,
      estimatedJ: meter.estimatedJ,
    },
    belief: beliefOf(situation),
    commissioning: tellCommission(state.commission),
    learnt: state.learnt,
    answer,
  };
}
