import type { Decision } from '../../../shared-types/engine.ts';
import type { PlantState } from '../../../sim/plant/state.ts';
import { panLiquidKg } from '../../../sim/plant/state.ts';

/** What one moment of a failure is judged by. */
export interface Moment {
  readonly decision: Decision;
  readonly plant: PlantState;
  /** What the same loop decided at this moment without the failure. */
  readonly healthy: Decision;
}

const isStill = ({ outputs }: Decision) => outputs.pumpFraction === 0;
const isOpen = ({ outputs }: Decision) => outputs.drainOpen || outputs.drainPumpOn;

/** What is expected of the outputs, or of the water itself; true from when it is so. */
export const responses = {
  'goes on as if nothing had happened': ({ decision, healthy }) =>
    JSON.stringify(decision.outputs) === JSON.stringify(healthy.outputs),
  'goes on harvesting': ({ decision }) => decision.outputs.pumpFraction > 0,
  'pump stops': ({ decision }) => isStill(decision),
  'pump stops and drain opens': ({ decision }) => isStill(decision) && isOpen(decision),
  'is locked': ({ decision }) => isStill(decision) && decision.phase === 'stopped',
  'holds its water without the pump': ({ decision }) => isStill(decision) && !isOpen(decision),
  'keeps the pan warm from the store': ({ decision }) =>
    decision.outputs.pumpFraction > 0 && decision.reasons.phase.code === 'frost-measured',
  'dumps heat': ({ decision }) => decision.outputs.heatDumpOn === true,
  'pan is empty': ({ plant }) => panLiquidKg(plant) < 0.01 * plant.parts.pan.fullKg,
} as const satisfies Record<string, (moment: Moment) => boolean>;
export type ResponseName = keyof typeof responses;
