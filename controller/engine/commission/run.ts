import type { CommissioningCheck, CommissioningStep } from '../../../shared-types/commissioning.ts';
import type { Feedback } from '../../../shared-types/engine.ts';
import { measurePair, notePair } from '../pair/learn.ts';
import { canEmpty, canRest, panVolumeL } from '../pan.ts';
import { good } from '../sense/facts.ts';
import { filmMm } from '../sense/pan-water.ts';
import { isPumping, type Situation } from '../situation.ts';
import type { EngineState, Lease } from '../state.ts';
import { firstStep, flowingS, mostDrainTimes } from './demand.ts';
import { judgeDirection, judgeDrop, judgeFollowed, judgeSensors } from './judge.ts';
import { type ActiveRun, type CommissionMemory, type Finding, type Followed, isUnderWay } from './memory.ts';

type Slots = Pick<EngineState, 'commission' | 'operator' | 'learnt'>;

/** Time that the device is given to do and to say what it was told [ms]; a design choice. */
const followsMs = 30_000;

/**
 * Brings a commissioning run up to this step, once the phase of the step is settled.
 *
 * It begins with a lease of its kind, ends at once with any protection, with the lease, or with another wish of
 * the operator, and gives the lease back when it is done.
 *
 * @param hazard - A protection acts at this step.
 */
export function updateCommission(situation: Situation, hazard: boolean, feedback: Feedback | null): Slots {
  const { state } = situation;
  const { commission, operator } = state;
  const lease = operator.lease?.kind === 'commission' ? operator.lease : null;
  const underWay = isUnderWay(commission) ? commission : null;
  if (lease === null) return underWay === null ? state : breakOff(underWay, situation);
  const before = underWay ?? begin(situation, lease);
  if (hazard) return breakOff(before, situation);
  const followed = follow(before.followed, situation, feedback);
  const watched = followed === before.followed ? before : { ...before, followed };
  const { memory, learnt } = proceed(watched, situation, lease);
  return memory.step === 'done'
    ? end({ ...state, learnt }, memory)
    : { commission: memory, operator: confirmHeard(operator, lease, memory, before), learnt };
}

function breakOff(run: ActiveRun, { state, runMs }: Situation): Slots {
  return end(state, { ...run, step: 'ended', sinceMs: runMs });
}

function begin({ runMs, site }: Situation, { untilMs }: Lease): ActiveRun {
  return {
    step: firstStep(site),
    sinceMs: runMs,
    untilMs,
    fillS: null,
    followed: { on: false, off: false, differed: false },
    findings: [],
  };
}

/** Takes the lease back. */
function end({ operator, learnt }: EngineState, commission: CommissionMemory): Slots {
  const held = operator.lease?.kind === 'commission';
  return { commission, operator: held ? { ...operator, lease: null } : operator, learnt };
}

/** What a person saw counts once: for the step in which it was seen. */
function confirmHeard(
  operator: EngineState['operator'],
  lease: Lease,
  now: CommissionMemory,
  before: CommissionMemory,
): EngineState['operator'] {
  const heard = lease.confirmed && (now.step !== before.step || now.fillS !== before.fillS);
  return heard ? { ...operator, lease: { ...lease, confirmed: false } } : operator;
}

function follow(
  before: Followed,
  { state, runMs, settings }: Situation,
  feedback: Feedback | null,
): Followed {
  if (feedback === null || feedback.ageMs > settings.staleAfterS * 1000) return before;
  const { pump, outputs } = state;
  // What was said before the pump was told otherwise does not count.
  if (runMs - pump.sinceMs < followsMs + feedback.ageMs) return before;
  const commanded = outputs.pumpFraction > 0;
  if (feedback.pumpFraction > 0 !== commanded)
    return before.differed ? before : { ...before, differed: true };
  if (commanded) return before.on ? before : { ...before, on: true };
  return before.off ? before : { ...before, off: true };
}

interface Progress {
  readonly memory: CommissionMemory;
  readonly learnt: EngineState['learnt'];
}

function proceed(memory: ActiveRun, situation: Situation, lease: Lease): Progress {
  const { state, runMs } = situation;
  const { learnt, phase } = state;
  switch (memory.step) {
    case 'emptying':
      return { memory: phase.name === 'empty' ? to('filling', memory, runMs) : memory, learnt };
    case 'filling':
      return fill(memory, situation, lease);
    case 'flowing': {
      if (phase.name !== 'circulating') return { memory, learnt };
      if (runMs - memory.sinceMs < flowingS(situation) * 1000) return { memory, learnt };
      return judgeFlow(memory, situation);
    }
    case 'draining':
      return drain(memory, situation, lease);
  }
}

/** Judges pump and sensors by water that has long gone round, and keeps what the pair of sensors shows. */
function judgeFlow(memory: CommissionMemory, situation: Situation): Progress {
  const { state, site, runMs } = situation;
  const pair = measurePair(situation);
  const judged = note(note(memory, judgeDirection(situation)), judgeSensors(situation, pair));
  const learnt = pair === null ? state.learnt : notePair(state.learnt, pair.offsetK, pair.sdK);
  return { memory: canEmpty(site) ? to('draining', judged, runMs) : done(judged, situation), learnt };
}

function to(step: CommissioningStep, memory: CommissionMemory, runMs: number): CommissionMemory {
  return { ...memory, step, sinceMs: runMs };
}

function note(memory: CommissionMemory, finding: Finding): CommissionMemory {
  return { ...memory, findings: [...memory.findings, finding] };
}

function done(memory: CommissionMemory, situation: Situation): CommissionMemory {
  const told = note(note(memory, judgeFollowed(memory.followed)), judgeDrop(situation));
  return to('done', told, situation.runMs);
}

/** The fill is measured from an empty pan, by level, by what the pump moved, or by a person. */
function fill(before: CommissionMemory, situation: Situation, lease: Lease): Progress {
  const { state, runMs, site, settings } = situation;
  const pumpedS = isPumping(state) ? (runMs - state.pump.sinceMs) / 1000 : 0;
  const seen = before.fillS === null && canEmpty(site) && isSeenFull(situation, lease);
  const memory = seen ? { ...before, fillS: pumpedS } : before;
  const { fillS } = memory;
  const patient = fillS === null && canEmpty(site) && pumpedS < settings.fillTimeoutS;
  if (state.phase.name !== 'circulating' || patient) return { memory, learnt: state.learnt };
  const finding = timed('fill-time', fillS);
  const learnt = fillS === null ? state.learnt : { ...state.learnt, fillTimeS: fillS };
  return { memory: to('flowing', note(memory, finding), runMs), learnt };
}

function isSeenFull({ state, facts, readings, site }: Situation, lease: Lease): boolean {
  if (!isPumping(state)) return false;
  if (facts.levelMm !== null) return state.water.level === 'full';
  if (lease.confirmed) return true;
  // A pan with a free outlet loses while it fills.
  return canRest(site) && good(readings.flowLMin) !== null && state.meter.filledL >= panVolumeL(site);
}

/** Emptying is measured down to the last film, by level or by a person. */
function drain(memory: CommissionMemory, situation: Situation, lease: Lease): Progress {
  const { state, runMs, settings, facts } = situation;
  const stood = isPumping(state) ? 0 : (runMs - state.pump.sinceMs) / 1000;
  if (stood === 0) return { memory, learnt: state.learnt };
  const empty = facts.levelMm === null ? lease.confirmed === true : facts.levelMm <= filmMm;
  if (!empty && stood < mostDrainTimes * settings.drainTimeS) return { memory, learnt: state.learnt };
  const drainTimeS = empty ? stood : null;
  const finding = timed('drain-time', drainTimeS);
  // A level that was watched and did not fall tells that the pan does not empty.
  const told = drainTimeS === null && facts.levelMm !== null ? failed(finding, facts.levelMm) : finding;
  const learnt = drainTimeS === null ? state.learnt : { ...state.learnt, drainTimeS };
  return { memory: done(note(memory, told), situation), learnt };
}

function timed(check: CommissioningCheck, seconds: number | null): Finding {
  return seconds === null
    ? { check, result: 'by-hand', values: {} }
    : { check, result: 'passed', values: { seconds } };
}

function failed(finding: Finding, levelMm: number): Finding {
  return { ...finding, result: 'failed', values: { levelMm } };
}
