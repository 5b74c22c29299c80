import type { Decision } from '../../shared-types/engine.ts';

/** What of a decision, taken now or read from a log, drives the loop. */
export type Driving = Pick<Decision, 'outputs'>;

/** True when two decisions drive the loop differently. */
export function outputsDiffer({ outputs: a }: Driving, { outputs: b }: Driving): boolean {
  return (
    a.pumpFraction !== b.pumpFraction ||
    a.drainOpen !== b.drainOpen ||
    a.drainPumpOn !== b.drainPumpOn ||
    a.exchangerPumpOn !== b.exchangerPumpOn ||
    a.heatDumpOn !== b.heatDumpOn
  );
}
