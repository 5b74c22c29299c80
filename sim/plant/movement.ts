import type { Account } from './account.ts';
import type { Actuators, Impairments } from './impairments.ts';
import { lowCell, type PanFlows, panFlowsOf } from './pan-flows.ts';
import { targetsInto } from './pan-shape.ts';
import { type LaneParts, panCells, pipeNodes } from './parts.ts';
import { pumpKgS, pumpPowerW } from './pump-flow.ts';
import { createExchange, letIn, letOut, moveAlong, takeFromEnd } from './row.ts';
import { type Lane, type PlantState, panLiquidKg } from './state.ts';
import { bringHome } from './store.ts';
import { at, type Row, sum, waterJKgK } from './water.ts';

/** Share of the pump's electricity that ends as heat in the water it moves (from memory). */
const pumpHeatFraction = 0.3;
/** A pipe that nothing holds full runs empty with this time constant. */
const runEmptyS = 15;
/** Share of a free-running return pipe that is water. */
const freeHoldFraction = 0.15;

const lastCell = panCells - 1;
const lastNode = pipeNodes - 1;
/** Work space of the moves; empty between them. */
const alongPan = createExchange(panCells);
const alongPipe = createExchange(pipeNodes);
const targetKg = Array.from({ length: panCells }, () => 0);

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
  let liftedKgC = takeFromSource(state, liftedKg);
  account.homeJ -= state.reservoir === null ? liftedKgC * waterJKgK : 0;
  if (liftedKg > 0) {
    const pumpJ = pumpHeatFraction * powerW * dtS;
    account.pumpJ += pumpJ;
    liftedKgC += pumpJ / waterJKgK;
  }
  const inKg = fillSupply(state, liftedKg, liftedKgC);
  const flows = panFlowsOf(state, panKg, inKg, actuators, impairments, dtS);
  const left = movePan(state, panKg, inKg, at(state.supply.waterC, lastNode), flows);
  account.leakedKg += flows.leakKg;
  account.leakedJ += left.leakedKgC * waterJKgK;
  bring(state, account, flows.drainKg, left.drainedKgC);
  runBack(state, account, flows.backKg, left.backKgC, liftedKg === 0 && nothingHolds(state, flows), dtS);
  runReturn(state, account, flows.outletKg, left.outletKgC, dtS);
  return { liftedKg, pumpPowerW: powerW };
}

/** The supply pipe stands full as long as a pan above it does, and does not empty. */
function nothingHolds(state: PlantState, { backKg, drainKg, outletKg, leakKg }: PanFlows): boolean {
  return backKg + drainKg + outletKg + leakKg > 0 || panLiquidKg(state) === 0;
}

function availableKg({ parts, store, reservoir }: PlantState): number {
  const heldKg = reservoir === null ? sum(store.massKg) : at(reservoir.massKg, 0);
  const leastKg = reservoir === null ? parts.store.leastKg : parts.reservoir.leastKg;
  return Math.max(0, heldKg - leastKg);
}

/** @returns Mass times temperature of what was taken [kg °C]. */
function takeFromSource({ store, reservoir }: PlantState, massKg: number): number {
  if (massKg === 0) return 0;
  return takeFromEnd(reservoir ?? store, massKg, true);
}

/** Lets lifted water into the supply pipe. @returns what comes out of it into the pan [kg]. */
function fillSupply({ supply, parts }: PlantState, liftedKg: number, liftedKgC: number): number {
  if (liftedKg === 0) return 0;
  const outKg = Math.max(0, sum(supply.massKg) + liftedKg - parts.pipe.fullKg);
  letIn(alongPipe, 0, liftedKg, liftedKgC / liftedKg);
  letOut(alongPipe, lastNode, outKg);
  moveAlong(supply, alongPipe);
  return outKg;
}

/** Heat that left the pan with each of its flows [kg °C]. */
interface PanLeft {
  outletKgC: number;
  drainedKgC: number;
  backKgC: number;
  leakedKgC: number;
}

function movePan(state: PlantState, panKg: number, inKg: number, inC: number, flows: PanFlows): PanLeft {
  const left: PanLeft = { outletKgC: 0, drainedKgC: 0, backKgC: 0, leakedKgC: 0 };
  const outKg = flows.outletKg + flows.drainKg + flows.backKg + flows.leakKg;
  if (inKg === 0 && outKg === 0) return left;
  const { pan, parts } = state;
  const throughKg = Math.min(inKg, outKg);
  const { edge, core, edgeFlowFraction } = parts.pan;
  // What passes through keeps to its lane; what raises or lowers the level does so evenly.
  const edgeInKg = edge.waterFraction * (inKg - throughKg) + edgeFlowFraction * throughKg;
  const wantedKg = edge.waterFraction * (outKg - throughKg) + edgeFlowFraction * throughKg;
  const edgeKg = sum(pan.edge.massKg) + edgeInKg;
  const coreKg = panKg + inKg - edgeKg;
  // Ice may have left one lane short of what would be its share.
  const edgeOutKg = Math.max(outKg - coreKg, Math.min(edgeKg, wantedKg));
  const low = lowCell(state);
  moveLane(pan.edge, edge, parts.pan.fillShapes, edgeInKg, inC, edgeOutKg, outKg, flows, low, left);
  moveLane(
    pan.core,
    core,
    parts.pan.fillShapes,
    inKg - edgeInKg,
    inC,
    outKg - edgeOutKg,
    outKg,
    flows,
    low,
    left,
  );
  return left;
}

function moveLane(
  lane: Lane,
  parts: LaneParts,
  shapes: readonly number[],
  inKg: number,
  inC: number,
  outKg: number,
  allOutKg: number,
  flows: PanFlows,
  low: number,
  left: PanLeft,
): void {
  const share = allOutKg > 0 ? outKg / allOutKg : 0;
  if (inKg > 0) letIn(alongPan, 0, inKg, inC);
  letOut(alongPan, lastCell, share * flows.outletKg);
  letOut(alongPan, low, share * (flows.drainKg + flows.leakKg));
  letOut(alongPan, 0, share * flows.backKg);
  const restKg = Math.max(0, sum(lane.massKg) + inKg - outKg);
  targetsInto(targetKg, shapes, restKg, parts.cellKg);
  moveAlong(lane, alongPan, targetKg);
  left.outletKgC += share * flows.outletKg * at(lane.waterC, lastCell);
  left.drainedKgC += share * flows.drainKg * at(lane.waterC, low);
  left.leakedKgC += share * flows.leakKg * at(lane.waterC, low);
  left.backKgC += share * flows.backKg * at(lane.waterC, 0);
}

/** Water from the pan back through the supply pipe, and the pipe's own once nothing holds it. */
function runBack(
  state: PlantState,
  account: Account,
  backKg: number,
  backKgC: number,
  open: boolean,
  dtS: number,
): void {
  const { supply } = state;
  const ownKg = backKg > 0 || !open ? 0 : ranEmptyKg(sum(supply.massKg), dtS);
  if (backKg + ownKg === 0) return;
  if (backKg > 0) letIn(alongPipe, lastNode, backKg, backKgC / backKg);
  letOut(alongPipe, 0, backKg + ownKg);
  moveAlong(supply, alongPipe);
  bring(state, account, backKg + ownKg, (backKg + ownKg) * at(supply.waterC, 0));
}

/** Water down the return pipe: it runs free, or fills the pipe and pulls once it has carried the air away. */
function runReturn(
  state: PlantState,
  account: Account,
  outletKg: number,
  outletKgC: number,
  dtS: number,
): void {
  const { parts } = state;
  const pipe: Row = state.return;
  const heldKg = sum(pipe.massKg);
  if (outletKg === 0 && heldKg === 0) return;
  state.returnAirFraction = returnAir(state, outletKg / dtS, dtS);
  const waterFraction = 1 - state.returnAirFraction * (1 - freeHoldFraction);
  const outKg =
    outletKg > 0
      ? Math.max(0, heldKg + outletKg - waterFraction * parts.pipe.fullKg)
      : ranEmptyKg(heldKg, dtS);
  if (outletKg > 0) letIn(alongPipe, 0, outletKg, outletKgC / outletKg);
  letOut(alongPipe, lastNode, outKg);
  moveAlong(pipe, alongPipe);
  bring(state, account, outKg, outKg * at(pipe.waterC, lastNode));
}

/** Share of the return pipe that is air, after a step at this flow. */
function returnAir({ parts, returnAirFraction }: PlantState, outletKgS: number, dtS: number): number {
  if (!parts.plumbing.siphons || outletKgS === 0) return 1;
  const velocityMs = outletKgS / (parts.pipe.areaM2 * 998.2);
  // Fast water takes the air along within some lengths of pipe; slow water lets it climb back.
  const alongFraction = (velocityMs * dtS) / parts.pipe.lengthM;
  const { siphonMs } = parts.traits;
  if (velocityMs >= siphonMs) return returnAirFraction * Math.exp(-alongFraction / 3);
  if (velocityMs < 0.6 * siphonMs) return Math.min(1, returnAirFraction + alongFraction / 3);
  return returnAirFraction;
}

function ranEmptyKg(heldKg: number, dtS: number): number {
  return heldKg < 0.001 ? heldKg : heldKg * -Math.expm1(-dtS / runEmptyS);
}

function bring(state: PlantState, account: Account, massKg: number, massKgC: number): void {
  if (massKg === 0) return;
  if (state.reservoir === null) account.homeJ += massKgC * waterJKgK;
  bringHome(state, massKg, massKgC / massKg);
}
