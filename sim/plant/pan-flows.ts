import { gravityMS2 } from '../physics/gravity.ts';
import type { Actuators, Impairments } from './impairments.ts';
import { panCells } from './parts.ts';
import type { PlantState } from './state.ts';
import { at, waterKgL } from './water.ts';

/** Water that leaves the pan in one step [kg], none of it negative. */
export interface PanFlows {
  /** Over the high outlet, or through the free low one, into the return pipe. */
  readonly outletKg: number;
  /** Through the drain line, home. */
  readonly drainKg: number;
  /** Back through the resting pump. */
  readonly backKg: number;
  /** Into the ground. */
  readonly leakKg: number;
}

const densityKgM3 = 1000 * waterKgL;
/** A free low outlet is throttled, or the pan would never fill: to this share of the rated flow when full. */
const lowOutletFraction = 0.6;
/** Share of the rated flow that runs back through a resting pump. Both are design choices. */
const backFraction = 0.9;
/** Below this mean depth the last film runs off at once. */
const filmM = 0.0001;
/** A torn liner lets the pan out with this time constant. */
const burstS = 120;

/**
 * What leaves a pan that is given `inKg` in this step.
 *
 * A drain line runs full and is driven by its fall, until its rim stands in too little water: then the
 * rim is a weir. A low outlet without valve is an orifice under the water above it. A high outlet passes
 * whatever stands above it.
 */
export function panFlowsOf(
  state: PlantState,
  panKg: number,
  inKg: number,
  actuators: Actuators,
  impairments: Impairments,
  dtS: number,
): PanFlows {
  const { plumbing, pan, pump } = state.parts;
  let leftKg = panKg + inKg;
  const take = (kgS: number) => {
    const takenKg = Math.min(leftKg, kgS * dtS);
    leftKg -= takenKg;
    return takenKg;
  };
  const leakKg = impairments.burst ? take(leftKg / Math.max(burstS, dtS)) : take(impairments.leakKgS);
  const backKg =
    plumbing.drain === 'pump-stop' && actuators.pumpFraction === 0
      ? take(Math.min(pump.ratedKgS * backFraction, rimKgS(state, 0)) * impairments.drainFraction)
      : 0;
  let outletKg =
    plumbing.drain === 'pump-stop'
      ? take(
          pump.ratedKgS *
            lowOutletFraction *
            Math.sqrt(depthFraction(state, panCells - 1)) *
            impairments.drainFraction,
        )
      : 0;
  let drainKg = take(drainKgS(state, actuators) * impairments.drainFraction);
  const emptying = outletKg > 0 || drainKg > 0 || backKg > 0;
  if (emptying && inKg === 0 && leftKg < (filmM / pan.depthM) * pan.fullKg) {
    // The last film goes the way that all the rest went.
    if (drainKg > 0) drainKg += leftKg;
    else outletKg += leftKg;
    leftKg = 0;
  }
  return { outletKg: outletKg + Math.max(0, leftKg - pan.fullKg), drainKg, backKg, leakKg };
}

function drainKgS(state: PlantState, actuators: Actuators): number {
  const { plumbing, drain } = state.parts;
  if (plumbing.drain === 'drain-valve' && actuators.drainOpen)
    return Math.min(drain.fullKgS, rimKgS(state, lowCell(state)));
  if (plumbing.drain === 'drain-pump' && actuators.drainPumpOn)
    return Math.min(drain.pumpKgS, rimKgS(state, lowCell(state)));
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
 * What passes the rim of a hole in the floor [kg/s]: a sharp weir, 2/3 Cd L sqrt(2 g) h^1.5 with Cd 0.6.
 *
 * Water in a falling cell is a wedge, so that it stands deeper at the hole than on the average.
 */
function rimKgS(state: PlantState, cell: number): number {
  const { pan, drain } = state.parts;
  const meanM = depthFraction(state, cell) * pan.depthM;
  const wedgeM = pan.cellFallM;
  const atHoleM = meanM < wedgeM / 2 ? Math.sqrt(2 * wedgeM * meanM) : meanM + wedgeM / 2;
  const depthM = Math.min(pan.depthM, atHoleM);
  return (2 / 3) * 0.6 * drain.rimM * Math.sqrt(2 * gravityMS2 * depthM) * depthM * densityKgM3;
}
