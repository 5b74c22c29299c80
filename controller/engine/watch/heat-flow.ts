import { heldFor } from '../blocks/hold.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { isTooHotForFlow, sourceC, turnoverMs, updateBound } from './flow-bound.ts';
import type { FlowMemory } from './memory.ts';
import { leastFlowLMin, takenSince } from './pump-signs.ts';

/** What the pan's water may be before it was exchanged once: a rest warms all of it, a filling little. */
const restTurnovers = 2;
const fillTurnovers = 0.5;
/** For so long the pan has to stand too high, without falling by so much; design choices. */
const hotHoldMs = 180_000;
const fallenK = 0.3;
/** An inlet this far from its source, that moves by no more, has got no water [K]; design choices. */
const apartK = 3;
const movedK = 1;
/** Time that water is given to come through the pipe [ms]; a design choice. */
const pipeMs = 300_000;

type Heat = Pick<FlowMemory, 'bound' | 'hotMs' | 'hotC' | 'stillInletC' | 'stillMs'>;
type Still = Pick<FlowMemory, 'stillInletC' | 'stillMs'>;

const notStill: Still = { stillInletC: null, stillMs: null };
const calm: Heat = { bound: null, hotMs: null, hotC: null, ...notStill };

/** What temperatures say of the flow, brought up to this step. */
export function updateHeatFlow(before: FlowMemory, situation: Situation): Heat {
  const { state, runMs, readings } = situation;
  if (state.phase.name !== 'circulating' || isSeenMoving(situation)) return calm;
  const bound = updateBound(before.bound, situation);
  const { stillInletC, stillMs } = stillInlet(before, situation);
  const panC = good(readings.panOutletC) ?? good(readings.panSheetC);
  if (panC === null || bound === null || !isSettled(situation) || !isTooHotForFlow(bound, situation))
    return { bound, hotMs: null, hotC: null, stillInletC, stillMs };
  const { hotMs, hotC } = before;
  return hotC !== null && panC >= hotC - fallenK
    ? { bound, hotMs, hotC, stillInletC, stillMs }
    : { bound, hotMs: runMs, hotC: panC, stillInletC, stillMs };
}

/** True once the water that was in the pan when the pump started has passed. */
function isSettled(situation: Situation): boolean {
  const { phase } = situation.state;
  const fresh = phase.name === 'circulating' && phase.afterFill;
  const turnovers = fresh ? fillTurnovers : restTurnovers;
  return situation.runMs - phase.sinceMs >= turnovers * turnoverMs(situation);
}

function isSeenMoving(situation: Situation): boolean {
  const flowLMin = good(takenSince(situation.readings.flowLMin, situation));
  return flowLMin !== null && flowLMin >= leastFlowLMin(situation);
}

/** The inlet as it was, as long as it neither comes to its source nor moves. */
function stillInlet({ stillInletC, stillMs }: FlowMemory, situation: Situation): Still {
  const inletC = good(situation.readings.panInletC);
  const fromC = sourceC(situation);
  if (inletC === null || fromC === null || Math.abs(inletC - fromC) < apartK) return notStill;
  return stillInletC !== null && Math.abs(inletC - stillInletC) < movedK
    ? { stillInletC, stillMs }
    : { stillInletC: inletC, stillMs: situation.runMs };
}

/** True when temperatures prove that no water moves, whatever the pump does. */
export function hasNoFlow(flow: FlowMemory, { state: { phase }, runMs }: Situation): boolean {
  return (
    phase.name === 'circulating' &&
    (heldFor(flow.stillMs, runMs, pipeMs) || heldFor(flow.hotMs, runMs, hotHoldMs))
  );
}
