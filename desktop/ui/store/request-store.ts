import { create } from 'zustand';
import type { Answer } from '../../../shared-types/engine.ts';
import type { RequestedOperation } from '../../../shared-types/messages.ts';
import type { MonitorReply, Problem } from '../../../shared-types/monitor-api.ts';

/** What became of the last request that was made on this page. */
export type Asked =
  | { readonly state: 'none' }
  | { readonly state: 'asking' }
  | { readonly state: 'answered'; readonly answer: Answer }
  | { readonly state: 'unanswered'; readonly problem: Problem };

export interface RequestState {
  readonly asked: Asked;
  /** What was asked; null before the first request. */
  readonly operation: RequestedOperation | null;
}

/** What became of a request by the monitor's reply. */
export const answerOf = (
  reply: MonitorReply<'request'>,
): Extract<Asked, { state: 'answered' | 'unanswered' }> =>
  reply.ok ? { state: 'answered', answer: reply.result } : { state: 'unanswered', problem: reply.problem };

const none: Asked = { state: 'none' };

export const useAsked = create<RequestState>(() => ({ asked: none, operation: null }));

export const selectAsked = (state: RequestState): Asked => state.asked;

/** What became of the last request if it is of one of the kinds, else nothing. */
export const selectAskedOf =
  (kinds: readonly RequestedOperation['kind'][]) =>
  ({ asked, operation }: RequestState): Asked =>
    operation !== null && kinds.includes(operation.kind) ? asked : none;
