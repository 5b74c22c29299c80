import { orificeKgS } from '../physics/draining.ts';
import { gravityMS2 } from '../physics/gravity.ts';
import type { Actuators, Impairments } from './impairments.ts';
import { panCells } from './parts.ts';
import type { PlantState } from './state.ts';
import { at, sum, waterKgL } from './water.ts';

/** Water that leaves the pan in one step [kg], none of it negative. */
export interface PanFlows {
  /** Over the high outlet, or through the free low one, into the return pipe. */
  readonly outletKg: number;
  /** Through the drain line, home. */
  readonly drainKg: number;
  /** Back through the resting pump. */
  readonly backKg: number;
  /** Into the ground: through the liner, and over the wall. */
  readonly leakKg: number;
}

const densityKgM3 = 1000 * waterKgL;
/** A free low outlet is throttled, or the pan would never fill: to this share of the rated flow when full. */
const lowOutletFraction = 0.6;
/** Share of the rated flow that runs back through a resting pump. Both are design choices. */
const backFraction = 0.9;
/** Discharge of a sharp edge. */
const holeCoefficient = 0.6;
/** Below this mean depth the last film runs off at once. */
const filmM = 0.0001;
/** A torn liner lets the pan out with this time constant. */
const burstS = 120;

/**
 * What leaves a pan that is given `inKg` in this step.
 *
 * A drain is a hole in the floor under little water: a weir around its rim, then an orifice, and never more
 * than its line carries. A low outlet without valve is throttled and follows the root of the depth. A high
 * outlet, beside a low one too, takes what stands above the full level, as far as the return pipe carries it; the
 * rest rises to the wall and runs over it. Ice takes up room like water.
 */
export function panFlowsOf(
  state: PlantState,
  panKg: number,
  inKg: number,
  actuators: Actuators,
  impairments: Impairments,
  dtS: number,
): PanFlows {
  const { plumbing, pan, pump, pipe } = state.parts;
  let leftKg = panKg + inKg;
  const take = (kgS: number) => {
    const takenKg = Math.min(leftKg, kgS * dtS);
    leftKg -= takenKg;
    return takenKg;
  };
  let leakKg = impairments.burst ? take(leftKg / Math.max(burstS, dtS)) : take(impairments.leakKgS);
  const free = plumbing.drain === 'pump-stop';
  const backKg = take(free ? backKgS(state, actuators, impairments) : 0);
  const lowKgS = lowOutletFraction * pump.ratedKgS * Math.sqrt(depthFraction(state, panCells - 1));
  let outletKg = take(free ? lowKgS * impairments.drainFraction : 0);
  let drainKg = take(drainKgS(state, actuators) * impairments.drainFraction);
  const emptying = outletKg > 0 || drainKg > 0 || backKg > 0;
  if (emptying && inKg === 0 && leftKg < (filmM / pan.depthM) * pan.fullKg) {
    // The last film goes the way that all the rest went.
    if (drainKg > 0) drainKg += leftKg;
    else outletKg += leftKg;
    leftKg = 0;
  }
  const iceKg = sum(state.pan.core.iceKg) + sum(state.pan.edge.iceKg);
  const aboveKg = (levelKg: number) => Math.min(leftKg, Math.max(0, leftKg + iceKg - levelKg));
  const overKg = Math.min(aboveKg(pan.fullKg), Math.max(0, pipe.gravityKgS * dtS - outletKg));
  leftKg -= overKg;
  leakKg += aboveKg(pan.wallKg);
  return { outletKg: outletKg + overKg, drainKg, backKg, leakKg };
}

/** Back through a resting pump, where nothing stands in the way. */
function backKgS(state: PlantState, { pumpFraction }: Actuators, impairments: Impairments): number {
  if (pumpFraction > 0 || impairments.sourceShut) return 0;
  return Math.min(state.parts.pump.ratedKgS * backFraction, holeKgS(state, 0)) * impairments.drainFraction;
}

function drainKgS(state: PlantState, actuators: Actuators): number {
  const { plumbing, drain } = state.parts;
  if (plumbing.drain === 'drain-valve' && actuators.drainOpen)
    return Math.min(drain.fullKgS, holeKgS(state, lowCell(state)));
  if (plumbing.drain === 'drain-pump' && actuators.drainPumpOn)
    return Math.min(drain.pumpKgS, holeKgS(state, lowCell(state)));
  return 0;
}

/** The cell where the pan lies lowest. */
export function lowCell({ parts }: PlantState): number {
  return parts.plumbing.outlet === 'low' ? panCells - 1 : 0;
}

/** Depth at a cell over the full depth, by its liquid water. */
function depthFraction({ pan, parts }: PlantState, cell: number): number {
  const { core, edge } = parts.pan;
  return Math.min(1, (at(pan.core.massKg, cell) + at(pan.edge.massKg, cell)) / (core.cellKg + edge.cellKg));
}

/**
 * What passes a hole in the floor [kg/s]: a sharp weir around its rim, 2/3 Cd L sqrt(2 g) h^1.5, or an orifice,
 * whichever is less; Cd 0.6 for both.
 *
 * Water in a falling cell is a wedge, so that it stands deeper at the hole than on the average.
 */
function holeKgS(state: PlantState, cell: number): number {
  const { pan, drain } = state.parts;
  const meanM = depthFraction(state, cell) * pan.depthM;
  const wedgeM = pan.cellFallM;
  const atHoleM = meanM < wedgeM / 2 ? Math.sqrt(2 * wedgeM * meanM) : meanM + wedgeM / 2;
  const depthM = Math.min(pan.depthM, atHoleM);
  const rimM = Math.PI * drain.insideM;
  const weirKgS =
    (2 / 3) * holeCoefficient * rimM * Math.sqrt(2 * gravityMS2 * depthM) * depthM * densityKgM3;
  return Math.min(weirKgS, orificeKgS(depthM, drain.insideM, holeCoefficient));
}
