import type { Answer, Operation, OperatorRequest } from '../../../shared-types/engine.ts';
import { acknowledge, shelve, unshelve } from '../alarms/by-hand.ts';
import { commissionMs, isConfirmable } from '../commission/demand.ts';
import { answerText } from '../explain/answer-text.ts';
import { loose } from '../input.ts';
import { canEmpty, canRest } from '../pan.ts';
import type { Command, Situation } from '../situation.ts';
import type { EngineState, Lease } from '../state.ts';
import { readRequest } from './read-request.ts';

/** A request issued this much after now comes from a clock that cannot be trusted [ms]. */
const mostAheadMs = 5000;
/** Request ids that are kept to tell a repeated one. */
const idsKept = 64;
/** An emptied pan stays empty for this long after its drain time [ms]; a design choice. */
const keptEmptyMs = 3_600_000;

type AnswerCode = Answer['code'];
type Slots = Pick<EngineState, 'operator' | 'alarms' | 'failure' | 'water'>;

interface Heard {
  readonly slots: Slots;
  readonly answer: Answer | null;
}

interface Outcome {
  readonly code: AnswerCode;
  readonly slots: Slots;
  readonly leaseMs?: number | undefined;
}

/**
 * Hears at most one request of an operator.
 *
 * @param hazard - What a protection demands at this step, if any.
 */
export function hear(given: unknown, situation: Situation, nowMs: number, hazard: Command | null): Heard {
  const slots = withoutEndedLease(situation);
  if (given === null) return { slots, answer: null };
  const request = readRequest(given);
  if (request === undefined) return { slots, answer: answerTo(idOf(given), { code: 'malformed', slots }) };
  const refusal = refusalOf(request, slots);
  if (refusal !== null) return { slots, answer: answerTo(request.id, { code: refusal, slots }) };
  const outcome = obey(
    request.operation,
    { ...situation, state: { ...situation.state, ...slots } },
    nowMs,
    hazard,
  );
  const seen = [...outcome.slots.operator.seen.slice(1 - idsKept), request.id];
  const operator = { ...outcome.slots.operator, seen };
  return { slots: { ...outcome.slots, operator }, answer: answerTo(request.id, outcome) };
}

function withoutEndedLease({ state: { operator, alarms, failure, water }, runMs }: Situation): Slots {
  const ended = operator.lease !== null && runMs >= operator.lease.untilMs;
  return { operator: ended ? { ...operator, lease: null } : operator, alarms, failure, water };
}

function idOf(given: unknown): string {
  const { id } = loose(given);
  return typeof id === 'string' ? id.slice(0, 64) : '';
}

function answerTo(id: string, { code, leaseMs }: Outcome): Answer {
  return {
    id,
    accepted: code === 'accepted',
    code,
    text: answerText(code),
    ...(leaseMs === undefined ? {} : { leaseMs }),
  };
}

function refusalOf({ id, ageMs, lifeMs }: OperatorRequest, { operator }: Slots): AnswerCode | null {
  if (operator.seen.includes(id)) return 'repeated';
  if (ageMs > lifeMs) return 'expired';
  return ageMs < -mostAheadMs ? 'from-the-future' : null;
}

function obey(operation: Operation, situation: Situation, nowMs: number, hazard: Command | null): Outcome {
  const { state, runMs, site, settings } = situation;
  switch (operation.kind) {
    case 'run-pump':
      if (hazard !== null && hazard.goal !== 'run') return { code: 'hazard-forbids', slots: state };
      return lease('run-pump', operation.minutes * 60_000, situation);
    case 'rest':
      if (!canRest(site)) return { code: 'not-possible-here', slots: state };
      if (hazard !== null && hazard.goal !== 'rest') return { code: 'hazard-forbids', slots: state };
      return lease('rest', operation.minutes * 60_000, situation);
    case 'empty':
      if (!canEmpty(site)) return emptiedByHand(state, hazard);
      return lease('empty', settings.drainTimeS * 1000 + keptEmptyMs, situation);
    case 'commission':
      if (hazard !== null) return { code: 'hazard-forbids', slots: state };
      return lease('commission', commissionMs(situation), situation);
    case 'confirm':
      return confirm(state);
    case 'automatic':
      return automatic(state);
    case 'acknowledge':
      return onAlarms(state, acknowledge(state.alarms, operation.alarm));
    case 'shelve':
      return onAlarms(
        state,
        shelve(state.alarms, operation.alarm, operation.minutes * 60_000, { runMs, nowMs }),
        operation.minutes * 60_000,
      );
    case 'unshelve':
      return onAlarms(state, unshelve(state.alarms, operation.alarm));
  }
}

/**
 * A person's word that a pan which cannot be emptied by the loop was emptied by hand: nothing is kept warm in it
 * any more, nor filled before the season is over. A level sensor knows better; a pump that runs is not told so.
 */
function emptiedByHand(state: EngineState, hazard: Command | null): Outcome {
  if (hazard?.goal === 'run') return { code: 'hazard-forbids', slots: state };
  if (state.phase.name !== 'resting') return { code: 'not-possible-here', slots: state };
  if (state.water.level === 'empty') return { code: 'nothing-to-do', slots: state };
  return { code: 'accepted', slots: { ...state, water: { ...state.water, level: 'empty' } } };
}

function lease(kind: Lease['kind'], leaseMs: number, { state, runMs }: Situation): Outcome {
  const operator = { ...state.operator, lease: { kind, untilMs: runMs + leaseMs } };
  return { code: 'accepted', slots: { ...state, operator }, leaseMs };
}

/** A person has seen that the pan is full, or that it is empty, for which the commissioning run waits. */
function confirm(state: EngineState): Outcome {
  const { lease } = state.operator;
  if (lease?.kind !== 'commission' || !isConfirmable(state)) return { code: 'nothing-to-do', slots: state };
  const operator = { ...state.operator, lease: { ...lease, confirmed: true } };
  return { code: 'accepted', slots: { ...state, operator } };
}

function automatic(state: EngineState): Outcome {
  if (state.operator.lease === null && state.failure.count === 0)
    return { code: 'nothing-to-do', slots: state };
  const operator = { ...state.operator, lease: null };
  return { code: 'accepted', slots: { ...state, operator, failure: { count: 0, cause: null } } };
}

function onAlarms(
  state: EngineState,
  changed: EngineState['alarms'] | 'no-such-alarm' | 'nothing-to-do' | 'not-shelvable',
  leaseMs?: number,
): Outcome {
  if (typeof changed === 'string') return { code: changed, slots: state };
  return { code: 'accepted', slots: { ...state, alarms: changed }, leaseMs };
}
