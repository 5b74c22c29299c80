import type { Outputs } from '../../shared-types/engine.ts';
import { type Fault, partFault } from './faults.ts';

/** What the faults of parts do to the loop, as numbers. */
export interface Impairments {
  /** The pump: head over its own, flow over what it would be, whether water moves at all, power over its own. */
  readonly pumpHeadFraction: number;
  readonly flowFraction: number;
  readonly pumpTurns: boolean;
  readonly waterMoves: boolean;
  /** Nothing passes between pump and store, neither way. */
  readonly sourceShut: boolean;
  readonly idlePowerFraction: number;
  readonly drainFraction: number;
  readonly airPocketFraction: number;
  readonly sunFraction: number;
  readonly leakKgS: number;
  /** The floor of the pan is open. */
  readonly burst: boolean;
  /** Water that a drain-back loop has for ever lost, over what it began with. */
  readonly reservoirLostFraction: number;
}

const healthy: Impairments = {
  pumpHeadFraction: 1,
  flowFraction: 1,
  pumpTurns: true,
  waterMoves: true,
  sourceShut: false,
  idlePowerFraction: 1,
  drainFraction: 1,
  airPocketFraction: 0,
  sunFraction: 1,
  leakKgS: 0,
  burst: false,
  reservoirLostFraction: 0,
};

const dayS = 86_400;

export function impairmentsOf(faults: readonly Fault[]): Impairments {
  if (faults.length === 0) return healthy;
  const size = (name: Fault['name'], without: number) => partFault(faults, name)?.size ?? without;
  const has = (name: Fault['name']) => partFault(faults, name) !== undefined;
  const clogging = partFault(faults, 'filter-clogging');
  const clogged = clogging === undefined ? 1 : (1 - clogging.size) ** (clogging.forS / dayS);
  const unprimed = has('pump-unprimed');
  const sourceShut = has('store-valve-shut');
  return {
    pumpHeadFraction: has('pump-reversed') ? 1 / 3 : 1,
    flowFraction: size('half-flow', 1) * clogged,
    pumpTurns: !has('pump-dead'),
    waterMoves: !unprimed && !sourceShut,
    sourceShut,
    // A pump that turns in air does little work.
    idlePowerFraction: unprimed ? 0.4 : 1,
    drainFraction: has('drain-stuck-shut') ? 0 : size('drain-slow', 1),
    airPocketFraction: size('air-pocket', 0),
    sunFraction: 1 - size('sheet-dirty', 0),
    leakKgS: size('pan-leak', 0) / 3600,
    burst: has('liner-burst'),
    reservoirLostFraction: size('reservoir-short', 0),
  };
}

/** What pump and drain really do, faults included. */
export interface Actuators {
  readonly pumpFraction: number;
  readonly drainOpen: boolean;
  readonly drainPumpOn: boolean;
  readonly exchangerPumpOn: boolean;
  readonly heatDumpOn?: boolean | undefined;
}

export function actuatorsOf(outputs: Outputs, faults: readonly Fault[]): Actuators {
  if (faults.length === 0) return outputs;
  const stuckShut = partFault(faults, 'drain-stuck-shut') !== undefined;
  const stuckOpen = partFault(faults, 'drain-stuck-open') !== undefined;
  if (partFault(faults, 'power-cut') !== undefined)
    // A valve that opens without power is open; one that is stuck stays where it is.
    return { pumpFraction: 0, drainOpen: !stuckShut, drainPumpOn: false, exchangerPumpOn: false };
  return {
    pumpFraction: partFault(faults, 'pump-stuck-on') ? 1 : outputs.pumpFraction,
    drainOpen: !stuckShut && (outputs.drainOpen || stuckOpen),
    drainPumpOn: outputs.drainPumpOn && !stuckShut,
    exchangerPumpOn: outputs.exchangerPumpOn,
    ...heatDumpOf(outputs, faults),
  };
}

/** A loop that has no heat dump says nothing of one. */
function heatDumpOf({ heatDumpOn }: Outputs, faults: readonly Fault[]): Pick<Actuators, 'heatDumpOn'> {
  if (heatDumpOn === undefined) return {};
  return { heatDumpOn: heatDumpOn && partFault(faults, 'dump-stuck-off') === undefined };
}
