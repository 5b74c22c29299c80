import type { Answer, OperatorRequest } from '../../shared-types/engine.ts';
import type { RequestedOperation, RequestMessage } from '../../shared-types/messages.ts';

type ChangeSettings = Extract<RequestedOperation, { kind: 'change-settings' }>;

/** A request for the engine, or one for new settings, which the daemon answers itself. */
export type SortedRequest =
  | { readonly kind: 'engine'; readonly request: OperatorRequest }
  | { readonly kind: 'settings'; readonly ageMs: number; readonly operation: ChangeSettings };

/**
 * Ages a request and sorts it by who answers it.
 *
 * The age counts on the wall clock, which the asker shares, however fast the controller's clock runs.
 */
export function sortRequest(message: RequestMessage, wallMs: number): SortedRequest {
  const ageMs = Math.round(wallMs - message.issuedAtMs);
  const { id, lifeMs, operation } = message;
  if (operation.kind === 'change-settings') return { kind: 'settings', ageMs, operation };
  return { kind: 'engine', request: { id, ageMs, lifeMs, operation } };
}

/** Clocks of two machines differ by this much without anybody being wrong [ms]. Common practice. */
const clockToleranceMs = 2000;

/** @returns why a request of this age must not be obeyed, or undefined. */
export function refusalByAge(message: RequestMessage, ageMs: number): Answer | undefined {
  const refused = (code: Answer['code'], text: string) => ({ id: message.id, accepted: false, code, text });
  if (ageMs > message.lifeMs)
    return refused('expired', `The request came ${(ageMs / 1000).toFixed(1)} s after it was issued.`);
  if (ageMs < -clockToleranceMs)
    return refused(
      'from-the-future',
      `The request is dated ${(-ageMs / 1000).toFixed(1)} s ahead of this controller's clock.`,
    );
  return undefined;
}
