import type { Outputs } from '../../shared-types/engine.ts';
import { type Fault, partFault } from './faults.ts';
import type { Parts } from './parts.ts';

/** What pump and drain really do, faults included. */
export interface Actuators {
  readonly pumpFraction: number;
  readonly drainOpen: boolean;
  readonly drainPumpOn: boolean;
  readonly exchangerPumpOn: boolean;
}

export function actuatorsOf(outputs: Outputs, faults: readonly Fault[]): Actuators {
  const drainOpen = partFault(faults, 'drain-stuck-shut')
    ? false
    : outputs.drainOpen || partFault(faults, 'drain-stuck-open') !== undefined;
  return {
    pumpFraction: partFault(faults, 'pump-stuck-on') ? 1 : outputs.pumpFraction,
    drainOpen,
    drainPumpOn: outputs.drainPumpOn && !partFault(faults, 'drain-stuck-shut'),
    exchangerPumpOn: outputs.exchangerPumpOn,
  };
}

/** Water moved in one step [kg], none of them negative. */
export interface Flows {
  /** From the store bottom (or the reservoir) up into the pan. */
  readonly upKg: number;
  /** Out of the pan through its outlet and drain, down the return pipe. */
  readonly downKg: number;
  /** Out of the pan back through the resting pump, down the supply pipe. */
  readonly backKg: number;
  /** Electric power of the pump [W]. */
  readonly pumpPowerW: number;
}

/** Share of the rated flow that a free low outlet passes from a full pan. */
const lowOutletShare = 0.6;
/** Share of the rated flow that runs back through a resting pump. */
const backShare = 0.9;
/** Below this depth [mm] a film is left, which runs off ever slower. */
const filmMm = 3;
const puddleMm = 0.05;

/**
 * How much water moves in a step, before it is moved.
 *
 * Drains are driven by the pipe's fall, which is much more than the depth of the pan, so they run
 * evenly until only a film is left. A high outlet passes whatever stands above it. A low outlet
 * without a valve always runs, with the root of the depth. Sizes are design choices (see `parts.ts`).
 */
export function flowsOf(
  parts: Parts,
  panKg: number,
  availableKg: number,
  actuators: Actuators,
  faults: readonly Fault[],
  dtS: number,
): Flows {
  const dead = partFault(faults, 'pump-dead') !== undefined;
  const speed = dead ? 0 : actuators.pumpFraction;
  const share = partFault(faults, 'half-flow')?.size ?? 1;
  const upKg = Math.min(parts.pump.ratedKgS * speed * share * dtS, Math.max(0, availableKg));
  const depthMm = (panKg / parts.pan.fullKg) * parts.pan.depthMm;
  const film = Math.min(1, depthMm / filmMm);
  let outKg = 0;
  let backKg = 0;
  if (parts.drain === 'pump-stop') {
    outKg = parts.pump.ratedKgS * lowOutletShare * Math.sqrt(depthMm / parts.pan.depthMm) * film * dtS;
    if (speed === 0) backKg = parts.pump.ratedKgS * backShare * film * dtS;
    if (partFault(faults, 'drain-stuck-shut')) outKg = backKg = 0;
  } else if (drainRuns(parts, actuators)) outKg = parts.drainKgS * film * dtS;
  if (depthMm < puddleMm && outKg > 0) outKg = panKg;
  backKg = Math.min(backKg, panKg);
  outKg = Math.min(outKg, panKg - backKg);
  const overKg = Math.max(0, panKg + upKg - outKg - backKg - parts.pan.fullKg);
  // Power at part speed follows the cube of it, above a fifth that the electronics take.
  const pumpPowerW = speed === 0 ? 0 : parts.pump.ratedPowerW * (0.2 + 0.8 * speed ** 3);
  return { upKg, downKg: outKg + overKg, backKg, pumpPowerW };
}

function drainRuns(parts: Parts, actuators: Actuators): boolean {
  if (parts.drain === 'drain-valve') return actuators.drainOpen;
  if (parts.drain === 'drain-pump') return actuators.drainPumpOn;
  return false;
}
