import type { Outputs } from '../../shared-types/engine.ts';
import { messageSchemaVersion } from '../../shared-types/messages.ts';
import type { Clock } from '../clock.ts';
import type { LoopLink } from '../links/link.ts';

/** Sends outputs over the link, numbered and with their expiry. */
export interface OutputSender {
  send(outputs: Outputs): void;
  /** Steady time since outputs last left over the link [ms]; null: not once. */
  renewedAgeMs(): number | null;
}

export function outputSender(link: LoopLink, expiryS: number, clock: Pick<Clock, 'steadyMs'>): OutputSender {
  let sequence = 0;
  let renewedMs: number | null = null;
  return {
    send(outputs) {
      const left = link.apply({
        schema: messageSchemaVersion,
        sequence: ++sequence,
        ...outputs,
        expiresInMs: expiryS * 1000,
      });
      if (left) renewedMs = clock.steadyMs();
    },
    renewedAgeMs: () => (renewedMs === null ? null : Math.round(clock.steadyMs() - renewedMs)),
  };
}
