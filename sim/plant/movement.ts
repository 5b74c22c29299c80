import type { Account } from './account.ts';
import { cooledKgC } from './heat-dump.ts';
import type { Actuators, Impairments } from './impairments.ts';
import { type PanFlows, panFlowsOf } from './pan-flows.ts';
import { movePan } from './pan-move.ts';
import { fillSupply, runBack, runReturn, supplyOutC } from './pipes.ts';
import { pumpKgS, pumpPowerW } from './pump-flow.ts';
import { takeFromEnd } from './row.ts';
import { type PlantState, panLiquidKg } from './state.ts';
import { bringHome } from './store.ts';
import { at, sum, waterJKgK } from './water.ts';

/** Share of the pump's electricity that ends as heat in the water it moves (from memory). */
const pumpHeatFraction = 0.3;

export interface Moved {
  /** Forward through the pump. */
  readonly liftedKg: number;
  readonly pumpPowerW: number;
}

/** Moves a step's water from the source through pipes and pan and home again; books pump heat and leaks. */
export function moveWater(
  state: PlantState,
  actuators: Actuators,
  impairments: Impairments,
  airC: number,
  dtS: number,
  account: Account,
): Moved {
  const speed = actuators.pumpFraction;
  const liftedKg = Math.min(pumpKgS(state, speed, impairments) * dtS, availableKg(state));
  const powerW = pumpPowerW(state, speed, liftedKg / dtS, impairments);
  account.electricityJ += powerW * dtS;
  const panKg = panLiquidKg(state);
  if (panKg === 0 && liftedKg === 0 && sum(state.supply.massKg) === 0 && sum(state.return.massKg) === 0)
    return { liftedKg: 0, pumpPowerW: powerW };
  const liftedKgC = lift(state, liftedKg, powerW * dtS, account);
  const inKg = fillSupply(state, liftedKg, liftedKgC);
  const flows = panFlowsOf(state, panKg, inKg, actuators, impairments, dtS);
  const left = movePan(state, panKg, inKg, supplyOutC(state), flows);
  account.leakedKg += flows.leakKg;
  account.leakedJ += left.leakKgC * waterJKgK;
  bring(state, account, flows.drainKg, left.drainKgC);
  const empties = liftedKg === 0 && !impairments.sourceShut && nothingHolds(state, flows);
  const back = runBack(state, flows.backKg, left.backKgC, empties, dtS);
  bring(state, account, back.massKg, back.massKgC);
  const home = runReturn(state, flows.outletKg, left.outletKgC, dtS);
  const homeKgC = actuators.heatDumpOn === true ? cooledKgC(state, home, airC, dtS) : home.massKgC;
  account.dumpedJ += (home.massKgC - homeKgC) * waterJKgK;
  bring(state, account, home.massKg, homeKgC);
  return { liftedKg, pumpPowerW: powerW };
}

function availableKg({ parts, store, reservoir }: PlantState): number {
  const heldKg = reservoir === null ? sum(store.massKg) : at(reservoir.massKg, 0);
  const leastKg = reservoir === null ? parts.store.leastKg : parts.reservoir.leastKg;
  return Math.max(0, heldKg - leastKg);
}

/** Takes water from store or reservoir and lets the pump warm it. @returns its mass times temperature [kg °C]. */
function lift({ store, reservoir }: PlantState, massKg: number, workJ: number, account: Account): number {
  if (massKg === 0) return 0;
  const takenKgC = takeFromEnd(reservoir ?? store, massKg, true);
  if (reservoir === null) account.homeJ -= takenKgC * waterJKgK;
  const pumpJ = pumpHeatFraction * workJ;
  account.pumpJ += pumpJ;
  return takenKgC + pumpJ / waterJKgK;
}

/** The supply pipe stands full as long as a pan above it does, and does not empty. */
function nothingHolds(state: PlantState, { backKg, drainKg, outletKg, leakKg }: PanFlows): boolean {
  return backKg + drainKg + outletKg + leakKg > 0 || panLiquidKg(state) === 0;
}

function bring(state: PlantState, account: Account, massKg: number, massKgC: number): void {
  if (massKg === 0) return;
  if (state.reservoir === null) account.homeJ += massKgC * waterJKgK;
  bringHome(state, massKg, massKgC / massKg);
}
