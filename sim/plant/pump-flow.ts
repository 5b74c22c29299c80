import { flowFrom, liftM } from './flow-tables.ts';
import type { Impairments } from './impairments.ts';
import type { PlantState } from './state.ts';
import { at, sum } from './water.ts';

/** A supply pipe with this share of ice is blocked. */
const blockedFraction = 0.2;

/** Height of the top of the store, or of the reservoir, above the water in it [m]. */
export function sourceBelowTopM({ parts, store, reservoir }: PlantState): number {
  if (reservoir !== null) {
    const { heightM, startKg } = parts.reservoir;
    return heightM * Math.max(0, 1 - at(reservoir.massKg, 0) / startKg);
  }
  return parts.store.heightM * Math.max(0, 1 - sum(store.massKg) / parts.store.brimKg);
}

/**
 * Flow that the pump drives into the supply pipe [kg/s], before anything runs short.
 *
 * The water is lifted over the pan's edge; as far as the return pipe has filled, its weight pulls and the
 * lift is given back.
 */
export function pumpKgS(state: PlantState, speedFraction: number, impairments: Impairments): number {
  if (speedFraction === 0 || !impairments.pumpTurns || !impairments.waterMoves) return 0;
  const { plumbing, flows, pipe } = state.parts;
  if (sum(state.supply.iceKg) > blockedFraction * pipe.fullKg) return 0;
  const belowM = sourceBelowTopM(state);
  const headM = speedFraction * speedFraction * flows.shutOffM * impairments.pumpHeadFraction;
  const { freeM, siphonM } = liftM(plumbing, belowM);
  const freeKgS = flowFrom(flows.freeKgS, headM - freeM, flows.shutOffM);
  const air = state.returnAirFraction;
  if (air === 1) return freeKgS * impairments.flowFraction;
  const pulledKgS = flowFrom(flows.siphonKgS, headM - siphonM, flows.shutOffM);
  return (air * freeKgS + (1 - air) * pulledKgS) * impairments.flowFraction;
}

/**
 * Electric power of the pump [W].
 *
 * A fifth is taken by its electronics; the rest follows the cube of the speed, and at a closed valve is a
 * little over half of that at the rated flow. Shares from memory, in the usual order of size.
 */
export function pumpPowerW(
  { parts }: PlantState,
  speedFraction: number,
  flowKgS: number,
  impairments: Impairments,
): number {
  if (speedFraction === 0 || !impairments.pumpTurns) return 0;
  const loadFraction = Math.min(1.3, flowKgS / (parts.pump.ratedKgS * speedFraction));
  const shaftFraction = speedFraction ** 3 * (0.55 + 0.45 * loadFraction) * impairments.idlePowerFraction;
  return parts.pump.ratedPowerW * (0.2 + 0.8 * shaftFraction);
}
