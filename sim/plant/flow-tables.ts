import type { Site } from '../../shared-types/site.ts';
import { pipeLossPa } from '../physics/friction.ts';
import { gravityMS2 } from '../physics/gravity.ts';
import { pumpHeadM } from '../physics/pump.ts';
import { waterViscosityM2S } from '../physics/water.ts';
import { at, columnOf, waterKgL } from './water.ts';

/** How the loop is put together, as far as water moves by it. */
export interface Plumbing {
  readonly reservoir: boolean;
  readonly outlet: Site['outlet'];
  readonly drain: Site['drain'];
  /** The return pipe can fill and pull, because its outlet is covered before it takes more than the pump gives. */
  readonly siphons: boolean;
  /** Share of its fall with which a full return pipe pulls. */
  readonly pullFraction: number;
  /** Height of the pan above the top of the store, where the return pipe ends. */
  readonly dropM: number;
}

const densityKgM3 = 1000 * waterKgL;
/** Of water at 30 °C; between 10 and 60 °C friction differs from this by up to a quarter. */
const viscosityM2S = waterViscosityM2S(30);
const entries = 32;

/** Flow against the head that is left for it, for quick reading in every step. */
export interface FlowTables {
  /** Head of the pump at full speed and no flow. */
  readonly shutOffM: number;
  /** Head that a balancing valve takes at the rated flow [m], so that the loop passes just that. */
  readonly throttleM: number;
  /** Flow [kg/s] at (i / 32)^2 of the shut-off head; the return pipe running free, and full. */
  readonly freeKgS: readonly number[];
  readonly siphonKgS: readonly number[];
}

export interface FlowCircuit {
  readonly ratedKgS: number;
  readonly ratedHeadM: number;
  readonly insideM: number;
  readonly roughnessM: number;
  /** Length of each of the two pipes. */
  readonly lengthM: number;
  /** Heights to overcome while the loop runs as it should. */
  readonly liftM: { readonly freeM: number; readonly siphonM: number };
  readonly siphons: boolean;
}

/** Heights that the pump has to overcome, with the return pipe running free and as a siphon. */
export function liftM({ siphons, pullFraction, dropM }: Plumbing, sourceBelowTopM: number) {
  const freeM = Math.max(0, dropM + sourceBelowTopM);
  if (!siphons) return { freeM, siphonM: freeM };
  return { freeM, siphonM: freeM - pullFraction * Math.max(0, freeM - sourceBelowTopM) };
}

/**
 * Flow of the pump through the loop by the head that is left once the water is lifted.
 *
 * The site file names the flow through the full loop; what its pump could do more is taken by a valve.
 * Pipes are straight: bends and fittings are part of that valve.
 */
export function flowTablesOf(circuit: FlowCircuit): FlowTables {
  const { ratedKgS, ratedHeadM, liftM: lift, siphons } = circuit;
  const shutOffM = pumpHeadM(0, 1, ratedHeadM);
  const pipes = siphons ? 2 : 1;
  const settledM = siphons ? lift.siphonM : lift.freeM;
  const throttleM = Math.max(0, ratedHeadM - settledM - pipes * frictionM(circuit, ratedKgS));
  const neededM = (flowKgS: number, count: number) => {
    const share = flowKgS / ratedKgS;
    const inPumpM = shutOffM - pumpHeadM(share, 1, ratedHeadM);
    return inPumpM + throttleM * share * share + count * frictionM(circuit, flowKgS);
  };
  const table = (count: number) =>
    columnOf(
      Array.from({ length: entries + 1 }, (_, i) =>
        flowAt((i / entries) ** 2 * shutOffM, (flowKgS) => neededM(flowKgS, count), 10 * ratedKgS),
      ),
    );
  return { shutOffM, throttleM, freeKgS: table(1), siphonKgS: table(2) };
}

function frictionM({ insideM, roughnessM, lengthM }: FlowCircuit, flowKgS: number): number {
  const lossPa = pipeLossPa({ flowKgS, insideM, lengthM, roughnessM, densityKgM3, viscosityM2S });
  return lossPa / (densityKgM3 * gravityMS2);
}

/** The flow that needs a head; what is needed rises with the flow. */
function flowAt(headM: number, neededM: (flowKgS: number) => number, mostKgS: number): number {
  let low = 0;
  let high = mostKgS;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (neededM(middle) < headM) low = middle;
    else high = middle;
  }
  return low;
}

/** Reads a table at a head [m]; 0 at no head and below. */
export function flowFrom(table: readonly number[], headM: number, shutOffM: number): number {
  if (headM <= 0) return 0;
  const place = Math.min(entries, Math.sqrt(headM / shutOffM) * entries);
  const step = Math.min(entries - 1, Math.floor(place));
  const before = at(table, step);
  return before + (at(table, step + 1) - before) * (place - step);
}
