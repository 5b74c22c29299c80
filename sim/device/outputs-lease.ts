import type { Outputs } from '../../shared-types/engine.ts';
import type { OutputMessage } from '../../shared-types/messages.ts';

/** Pump off, drain without power: what a device does when nobody tells it anything. */
export const safeState: Outputs = {
  pumpFraction: 0,
  drainOpen: true,
  drainPumpOn: false,
  exchangerPumpOn: false,
};

/** Outputs are also held this long on the wall's clock, see `createOutputsLease`. */
const leastWallMs = 2000;

export type HeardOutputs = Omit<OutputMessage, 'schema' | 'sequence'>;

export interface OutputsLease {
  renew(outputs: HeardOutputs, steadyMs: number, wallMs: number): void;
  /** Outputs in force at a steady instant that is not after `wallMs`. */
  inForce(steadyMs: number, wallMs: number): Outputs;
  expired(steadyMs: number, wallMs: number): boolean;
  /** Forgets what was told, as a restart does. */
  drop(): void;
}

/**
 * Holds what the controller told last, until it expires.
 *
 * An output lives for its own time on the device's steady clock, as on a real microcontroller, and for
 * two seconds of the wall's: where a simulated clock runs fast, a hiccup of the machine would otherwise
 * look like a dead controller. Before the first word everything is safe.
 */
export function createOutputsLease(): OutputsLease {
  let heard: (HeardOutputs & { readonly steadyMs: number; readonly wallMs: number }) | undefined;
  const expired = (steadyMs: number, wallMs: number) =>
    heard === undefined ||
    (steadyMs - heard.steadyMs >= heard.expiresInMs && wallMs - heard.wallMs >= leastWallMs);
  return {
    renew: (outputs, steadyMs, wallMs) => {
      heard = { ...outputs, steadyMs, wallMs };
    },
    inForce: (steadyMs, wallMs) =>
      heard === undefined || expired(steadyMs, wallMs)
        ? safeState
        : {
            pumpFraction: heard.pumpFraction,
            drainOpen: heard.drainOpen,
            drainPumpOn: heard.drainPumpOn,
            exchangerPumpOn: heard.exchangerPumpOn,
            ...(heard.heatDumpOn === undefined ? {} : { heatDumpOn: heard.heatDumpOn }),
          },
    expired,
    drop: () => {
      heard = undefined;
    },
  };
}
