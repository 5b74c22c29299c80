import type { EngineInput, Outputs } from '../../shared-types/engine.ts';

/** Decides from what a controller can know at an instant; remembers what it likes. */
export type Policy = (input: EngineInput) => Outputs;

export const pumping: Outputs = {
  pumpFraction: 1,
  drainOpen: false,
  drainPumpOn: false,
  exchangerPumpOn: true,
};
export const resting: Outputs = {
  pumpFraction: 0,
  drainOpen: false,
  drainPumpOn: false,
  exchangerPumpOn: false,
};
export const emptying: Outputs = { ...resting, drainOpen: true, drainPumpOn: true };
