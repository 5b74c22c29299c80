import { heldFor, hold } from '../blocks/hold.ts';
import { hasRunDry } from '../hazards/no-flow.ts';
import { canRest, panVolumeL } from '../pan.ts';
import { good } from '../sense/facts.ts';
import { isPumping, type Situation, withState } from '../situation.ts';
import { lowSince, updateFlowLow } from './flow-low.ts';
import { fullSpeedFraction, updateSmoothed } from './flow-share.ts';
import { hasNoFlow, updateHeatFlow } from './heat-flow.ts';
import { judgeContact } from './judge-contact.ts';
import { learnFlow, learnPriming } from './learn-flow.ts';
import { calmFlow, type FlowMemory } from './memory.ts';
import { noFlowKindOf } from './no-flow-kind.ts';
import { leastFlowLMin, takenSince } from './pump-signs.ts';
import { shortSince, updateReservoir } from './reservoir.ts';
import { updateRestBook } from './rest-level.ts';

/** A pan whose pump runs may stand below full for so long before it counts as losing its water [ms]. */
const sinksHoldMs = 60_000;

/** A pan that is still empty when so much of its water was pumped does not hold it; a design choice. */
const missingFraction = 0.4;

/** Brings the memories of moving water, of upkeep, and what is learnt of them up to this step. */
export function watch(situation: Situation): Situation {
  const { state } = situation;
  const flow = withKind(updateFlow(state.flow, situation), situation);
  const flowing = flow === state.flow ? situation : withState(situation, { ...state, flow });
  const primedNow = flow.primed && !state.flow.primed;
  const learnt = primedNow ? learnPriming(state.learnt, flowing) : learnFlow(state.learnt, flowing);
  const upkeep = updateRestBook(updateFlowLow(state.upkeep, flowing), flowing);
  const judged = updateReservoir(judgeContact({ upkeep, learnt }, flowing), flowing);
  return judged.upkeep === state.upkeep && judged.learnt === state.learnt
    ? flowing
    : withState(flowing, { ...flowing.state, upkeep: judged.upkeep, learnt: judged.learnt });
}

/** What is watched while the pump is to run; nothing of it outlasts the run but why it was stopped. */
function updateFlow(before: FlowMemory, situation: Situation): FlowMemory {
  const { kind, runsOnMs } = before;
  if (!isPumping(situation.state)) return before.pumping ? { ...calmFlow, kind, runsOnMs } : before;
  const { bound, hotMs, hotC, stillInletC, stillMs } = updateHeatFlow(before, situation);
  const { flowLMin, powerW, smoothedMs } = updateSmoothed(before, situation);
  return {
    pumping: true,
    bound,
    hotMs,
    hotC,
    stillInletC,
    stillMs,
    kind,
    runsOnMs: null,
    flowLMin,
    powerW,
    smoothedMs,
    primed: before.primed || hasPrimed(situation),
    lowMs: lowSince(before.lowMs, flowLMin, situation),
    sinksMs: hold(before.sinksMs, isSinking(situation), situation.runMs),
    shortMs: shortSince(before.shortMs, situation),
  };
}

/** Notes why no water moves at the step at which the pump is stopped for it. */
function withKind(flow: FlowMemory, situation: Situation): FlowMemory {
  const { state } = situation;
  if (!flow.pumping) return flow;
  const stops = hasRunDry(situation) || hasNoFlow(flow, situation);
  return stops ? { ...flow, kind: noFlowKindOf(withState(situation, { ...state, flow })) } : flow;
}

function hasPrimed(situation: Situation): boolean {
  if (situation.state.phase.name !== 'filling') return false;
  const flowLMin = good(takenSince(situation.readings.flowLMin, situation));
  return flowLMin !== null && flowLMin >= leastFlowLMin(situation);
}

/**
 * True while a pan that was full falls below it though the pump runs, or one that fills stays empty though much
 * was pumped, where nothing lets water out. Asked of a pump that is to run: what does not fill circulates.
 */
function isSinking(situation: Situation): boolean {
  const { state, facts, site } = situation;
  const { phase, water, outputs, meter } = state;
  if (phase.name === 'filling') {
    const pumped =
      good(situation.readings.flowLMin) !== null && meter.filledL >= missingFraction * panVolumeL(site);
    return pumped && canRest(site) && facts.levelMm !== null && water.level === 'empty';
  }
  const atFullSpeed = outputs.pumpFraction >= fullSpeedFraction;
  return atFullSpeed && canRest(site) && facts.levelMm !== null && water.level === 'part';
}

/** True when the pan under the running pump has lost its water. */
export function hasSunk({ state: { flow, phase }, runMs }: Situation): boolean {
  const pumping = phase.name === 'circulating' || phase.name === 'filling';
  return pumping && heldFor(flow.sinksMs, runMs, sinksHoldMs);
}
