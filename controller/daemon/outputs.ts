import type { Outputs } from '../../shared-types/engine.ts';
import { messageSchemaVersion } from '../../shared-types/messages.ts';
import type { LoopLink } from '../links/link.ts';

/** @returns what sends outputs over the link, numbered and with their expiry. */
export function outputSender(link: LoopLink, expiryS: number): (outputs: Outputs) => void {
  let sequence = 0;
  return (outputs) =>
    link.apply({
      schema: messageSchemaVersion,
      sequence: ++sequence,
      ...outputs,
      expiresInMs: expiryS * 1000,
    });
}
