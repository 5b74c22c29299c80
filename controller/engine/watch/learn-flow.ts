import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';
import { lessonMs } from './flow-share.ts';
import { fullFlowLMin } from './pump-signs.ts';

type Learnt = EngineState['learnt'];

/** A first flow is believed within these shares of the pump's rating; design choices. */
const leastFirstFraction = 0.6;
const mostFirstFraction = 1.6;
/**
 * How much of a better and of a worse flow is taken over at once, and how much worse it may be. Worse is learnt
 * so slowly, and only so little of it, that a filter that clogs in weeks is not taken for the rule. Design choices.
 */
const betterShare = 0.2;
const worseShare = 0.01;
const worseFraction = 0.95;

/** What is learnt of full flow and power at this step. */
export function learnFlow(learnt: Learnt, situation: Situation): Learnt {
  const { phase, flow } = situation.state;
  if (phase.name !== 'circulating' || flow.smoothedMs < lessonMs) return learnt;
  const flowLMin = learnFullFlow(learnt, situation);
  const powerW = learnFullPower(learnt, situation);
  if (flowLMin === null && powerW === null) return learnt;
  return {
    ...learnt,
    ...(flowLMin === null ? {} : { fullFlowLMin: flowLMin }),
    ...(powerW === null ? {} : { fullPowerW: powerW }),
  };
}

function learnFullFlow(learnt: Learnt, { state: { flow }, site }: Situation): number | null {
  const { flowLMin } = flow;
  if (flowLMin === null) return null;
  const known = learnt['fullFlowLMin'];
  if (known === undefined) {
    const share = flowLMin / site.pump.ratedFlowLMin;
    return share >= leastFirstFraction && share <= mostFirstFraction ? flowLMin : null;
  }
  return moved(known, flowLMin);
}

/** Power is learnt only where the flow beside it is healthy, or not measured. */
function learnFullPower(learnt: Learnt, { state: { flow }, site }: Situation): number | null {
  const { flowLMin, powerW } = flow;
  if (powerW === null || powerW <= 0) return null;
  if (flowLMin !== null && flowLMin < worseFraction * fullFlowLMin(site, learnt)) return null;
  const known = learnt['fullPowerW'];
  return known === undefined ? powerW : moved(known, powerW);
}

function moved(known: number, now: number): number | null {
  if (now < worseFraction * known) return null;
  return known + (now - known) * (now > known ? betterShare : worseShare);
}

/** The longest time in which a filling pump came to move water [s]; called when it just did. */
export function learnPriming(learnt: Learnt, { state, runMs }: Situation): Learnt {
  const tookS = (runMs - state.phase.sinceMs) / 1000;
  const { primingS } = learnt;
  return primingS !== undefined && primingS >= tookS ? learnt : { ...learnt, primingS: tookS };
}
