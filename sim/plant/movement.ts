import type { Account } from './account.ts';
import type { Flows } from './flows.ts';
import { pushThrough } from './pipe.ts';
import { moveAlong } from './row.ts';
import type { PlantState } from './state.ts';
import { layerFor } from './store.ts';
import { enthalpyJ, totalKg, waterJKgK } from './water.ts';

/** Share of the pump's electricity that ends as heat in the water it moves (from memory). */
const pumpHeatShare = 0.3;

/** Moves a step's water through pipes, pan and store, and books pump heat and overflow. */
export function moveWater(account: Account, state: PlantState, flows: Flows, dtS: number): void {
  const electricityJ = flows.pumpPowerW * dtS;
  account.electricityJ += electricityJ;
  const pumpJ = flows.upKg > 0 ? pumpHeatShare * electricityJ : 0;
  account.pumpJ += pumpJ;
  const liftedC = takeFromSource(state, flows.upKg) + (pumpJ > 0 ? pumpJ / (flows.upKg * waterJKgK) : 0);
  const intoPanC = pushThrough(state.supply, flows.upKg, liftedC);
  const last = state.pan.length - 1;
  const backward = flows.backKg;
  moveAlong(
    state.pan,
    [{ cell: 0, massKg: flows.upKg, waterC: intoPanC }],
    [
      { cell: 0, massKg: backward },
      { cell: last, massKg: flows.downKg },
    ],
  );
  const downC = pushThrough(state.return, flows.downKg, state.pan[last]?.waterC ?? 0);
  const backC = pushThrough(state.supply, backward, state.pan[0]?.waterC ?? 0, true);
  bringHome(state, flows.downKg, downC);
  bringHome(state, backward, backC);
  spill(account, state);
}

/** Takes water from the bottom of the store, or from the reservoir. @returns its temperature. */
function takeFromSource(state: PlantState, massKg: number): number {
  if (state.reservoir !== null) {
    state.reservoir.massKg -= massKg;
    return state.reservoir.waterC;
  }
  const bottom = state.store.length - 1;
  if (massKg > 0) moveAlong(state.store, [], [{ cell: bottom, massKg }]);
  return state.store[bottom]?.waterC ?? 0;
}

/** Lets water into the store, where it sinks or rises to its like, or into the reservoir. */
function bringHome(state: PlantState, massKg: number, waterC: number): void {
  if (massKg === 0) return;
  const { reservoir } = state;
  if (reservoir !== null) {
    const sumKg = reservoir.massKg + massKg;
    reservoir.waterC = (reservoir.massKg * reservoir.waterC + massKg * waterC) / sumKg;
    reservoir.massKg = sumKg;
    return;
  }
  moveAlong(state.store, [{ cell: layerFor(state.store, waterC), massKg, waterC }], []);
}

/** What stands above the brim of the store runs over, from the top. */
function spill(account: Account, state: PlantState): void {
  const overKg = totalKg(state.store) - state.parts.store.brimKg;
  if (overKg <= 0) return;
  moveAlong(state.store, [], [{ cell: 0, massKg: overKg }]);
  account.overflowKg += overKg;
  account.overflowJ += enthalpyJ(overKg, state.store[0]?.waterC ?? 0);
}
