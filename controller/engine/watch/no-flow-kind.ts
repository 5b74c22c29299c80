import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { leastFlowLMin, powerSays, takenSince } from './pump-signs.ts';

/** Why no water moves. Numbers, so that they may stand among the values of a reason. */
export const noFlowKinds = { unknown: 0, dead: 1, air: 2, shut: 3, reversed: 4 } as const;

/** What flow and power say of a pump that moves no water; `unknown` where neither is measured. */
export function noFlowKindOf(situation: Situation): number {
  const flowLMin = good(takenSince(situation.readings.flowLMin, situation));
  if (flowLMin !== null && flowLMin <= -leastFlowLMin(situation)) return noFlowKinds.reversed;
  switch (powerSays(situation)) {
    case 'none':
      return noFlowKinds.dead;
    case 'low':
      return noFlowKinds.air;
    case 'usual':
      // Only a power that was learnt tells a pump in air from one against a valve.
      return situation.state.learnt['fullPowerW'] === undefined ? noFlowKinds.unknown : noFlowKinds.shut;
    default:
      return noFlowKinds.unknown;
  }
}
