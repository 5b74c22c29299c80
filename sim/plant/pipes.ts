import { pipeNodes } from './parts.ts';
import { createExchange, letIn, letOut, moveAlong } from './row.ts';
import type { PlantState } from './state.ts';
import { at, sum, waterKgL } from './water.ts';

/** A pipe that nothing holds full runs empty with this time constant. */
const runEmptyS = 15;
/** Share of a free-running return pipe that is water. */
const freeHoldFraction = 0.15;
/** Air leaves a fast return pipe, and climbs back into a slow one, within some lengths of it. */
const airLengths = 3;
/** Below this share of the velocity that carries air along it climbs back. */
const slowFraction = 0.6;

const lastNode = pipeNodes - 1;
/** Work space of the moves; empty between them. */
const alongPipe = createExchange(pipeNodes);

/** Water that came out of a pipe: mass, and mass times temperature [kg °C]. */
export interface PipeOut {
  readonly massKg: number;
  readonly massKgC: number;
}
const nothing: PipeOut = { massKg: 0, massKgC: 0 };

/** Lets lifted water into the supply pipe. @returns what comes out of it into the pan [kg]. */
export function fillSupply({ supply, parts }: PlantState, liftedKg: number, liftedKgC: number): number {
  if (liftedKg === 0) return 0;
  const outKg = Math.max(0, sum(supply.massKg) + liftedKg - parts.pipe.fullKg);
  letIn(alongPipe, 0, liftedKg, liftedKgC / liftedKg);
  letOut(alongPipe, lastNode, outKg);
  moveAlong(supply, alongPipe);
  return outKg;
}

/** Temperature of what comes out of the supply pipe into the pan. */
export function supplyOutC({ supply }: PlantState): number {
  return at(supply.waterC, lastNode);
}

/** Water from the pan back down the supply pipe, and the pipe's own once it may run empty. */
export function runBack(
  { supply }: PlantState,
  backKg: number,
  backKgC: number,
  empties: boolean,
  dtS: number,
): PipeOut {
  const ownKg = backKg > 0 || !empties ? 0 : ranEmptyKg(sum(supply.massKg), dtS);
  const massKg = backKg + ownKg;
  if (massKg === 0) return nothing;
  if (backKg > 0) letIn(alongPipe, lastNode, backKg, backKgC / backKg);
  letOut(alongPipe, 0, massKg);
  moveAlong(supply, alongPipe);
  return { massKg, massKgC: massKg * at(supply.waterC, 0) };
}

/** Water down the return pipe: it runs free, or fills the pipe and pulls once it has carried the air away. */
export function runReturn(state: PlantState, outletKg: number, outletKgC: number, dtS: number): PipeOut {
  const { parts, return: pipe } = state;
  const heldKg = sum(pipe.massKg);
  if (outletKg === 0 && heldKg === 0) return nothing;
  let massKg: number;
  if (outletKg > 0) {
    state.returnAirFraction = returnAir(state, outletKg / dtS, dtS);
    const waterFraction = 1 - state.returnAirFraction * (1 - freeHoldFraction);
    massKg = Math.max(0, heldKg + outletKg - waterFraction * parts.pipe.fullKg);
    letIn(alongPipe, 0, outletKg, outletKgC / outletKg);
  } else {
    massKg = ranEmptyKg(heldKg, dtS);
    // Air takes the place of what ran out.
    const leftFraction = (heldKg - massKg) / parts.pipe.fullKg;
    const air = (1 - leftFraction) / (1 - freeHoldFraction);
    state.returnAirFraction = Math.min(1, Math.max(state.returnAirFraction, air));
  }
  letOut(alongPipe, lastNode, massKg);
  moveAlong(pipe, alongPipe);
  return { massKg, massKgC: massKg * at(pipe.waterC, lastNode) };
}

/** Share of the return pipe that is air, after a step at this flow. */
function returnAir({ parts, returnAirFraction }: PlantState, outletKgS: number, dtS: number): number {
  if (!parts.plumbing.siphons) return 1;
  const velocityMs = outletKgS / (parts.pipe.areaM2 * 1000 * waterKgL);
  const passed = (velocityMs * dtS) / (airLengths * parts.pipe.lengthM);
  const { siphonMs } = parts.traits;
  if (velocityMs >= siphonMs) return returnAirFraction * Math.exp(-passed);
  if (velocityMs < slowFraction * siphonMs) return Math.min(1, returnAirFraction + passed);
  return returnAirFraction;
}

function ranEmptyKg(heldKg: number, dtS: number): number {
  return heldKg < 0.001 ? heldKg : heldKg * -Math.expm1(-dtS / runEmptyS);
}
