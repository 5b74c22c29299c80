import type { Decision } from '../../shared-types/engine.ts';

/** True when two decisions drive the loop differently. */
export function outputsDiffer({ outputs: a }: Decision, { outputs: b }: Decision): boolean {
  return (
    a.pumpFraction !== b.pumpFraction ||
    a.drainOpen !== b.drainOpen ||
    a.drainPumpOn !== b.drainPumpOn ||
    a.exchangerPumpOn !== b.exchangerPumpOn ||
    a.heatDumpOn !== b.heatDumpOn
  );
}
