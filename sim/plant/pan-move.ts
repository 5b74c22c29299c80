import { lowCell, type PanFlows } from './pan-flows.ts';
import { targetsInto } from './pan-shape.ts';
import { type LaneParts, panCells } from './parts.ts';
import { createExchange, letIn, letOut, moveAlong } from './row.ts';
import type { Lane, PlantState } from './state.ts';
import { at, column, sum } from './water.ts';

const lastCell = panCells - 1;
/** A lane is full, and equally so in all its cells, but for rounding. */
const fullFraction = 1 - 1e-12;
/** Work space of the moves; empty between them. */
const alongPan = createExchange(panCells);
const targetKg = column(panCells, 0);

/** Mass times temperature that left the pan with each of its flows [kg °C]. */
export interface PanLeft {
  outletKgC: number;
  drainKgC: number;
  backKgC: number;
  leakKgC: number;
}

/** What one lane takes part in. */
interface LaneMove {
  readonly inKg: number;
  readonly inC: number;
  readonly outKg: number;
  /** Its share of all that leaves the pan. */
  readonly outFraction: number;
  /** Where the pan lies lowest. */
  readonly low: number;
}

/** Moves a step's water through the pan. @param panKg - Liquid in it before. */
export function movePan(
  state: PlantState,
  panKg: number,
  inKg: number,
  inC: number,
  flows: PanFlows,
): PanLeft {
  const left: PanLeft = { outletKgC: 0, drainKgC: 0, backKgC: 0, leakKgC: 0 };
  const outKg = flows.outletKg + flows.drainKg + flows.backKg + flows.leakKg;
  if (inKg === 0 && outKg === 0) return left;
  const { pan, parts } = state;
  const throughKg = Math.min(inKg, outKg);
  const { edge, core, edgeFlowFraction, fillShapes } = parts.pan;
  // What passes through keeps to its lane; what raises or lowers the level does so evenly.
  const edgeInKg = edge.waterFraction * (inKg - throughKg) + edgeFlowFraction * throughKg;
  const wantedKg = edge.waterFraction * (outKg - throughKg) + edgeFlowFraction * throughKg;
  const edgeKg = sum(pan.edge.massKg) + edgeInKg;
  const coreKg = panKg + inKg - edgeKg;
  // Ice may have left one lane short of what would be its share.
  const edgeOutKg = Math.max(outKg - coreKg, Math.min(edgeKg, wantedKg));
  const low = lowCell(state);
  const move = (laneInKg: number, laneOutKg: number): LaneMove => ({
    inKg: laneInKg,
    inC,
    outKg: laneOutKg,
    outFraction: outKg > 0 ? laneOutKg / outKg : 0,
    low,
  });
  moveLane(pan.edge, edge, fillShapes, move(edgeInKg, edgeOutKg), flows, left);
  moveLane(pan.core, core, fillShapes, move(inKg - edgeInKg, outKg - edgeOutKg), flows, left);
  return left;
}

function moveLane(
  lane: Lane,
  parts: LaneParts,
  shapes: readonly number[],
  { inKg, inC, outKg, outFraction, low }: LaneMove,
  { outletKg, drainKg, backKg, leakKg }: PanFlows,
  left: PanLeft,
): void {
  if (inKg > 0) letIn(alongPan, 0, inKg, inC);
  letOut(alongPan, lastCell, outFraction * outletKg);
  letOut(alongPan, low, outFraction * (drainKg + leakKg));
  letOut(alongPan, 0, outFraction * backKg);
  const restKg = Math.max(0, sum(lane.massKg) + inKg - outKg);
  if (restKg >= fullFraction * panCells * parts.cellKg) moveAlong(lane, alongPan);
  else {
    targetsInto(targetKg, shapes, restKg, parts.cellKg);
    moveAlong(lane, alongPan, targetKg);
  }
  left.outletKgC += outFraction * outletKg * at(lane.waterC, lastCell);
  left.drainKgC += outFraction * drainKg * at(lane.waterC, low);
  left.leakKgC += outFraction * leakKg * at(lane.waterC, low);
  left.backKgC += outFraction * backKg * at(lane.waterC, 0);
}
