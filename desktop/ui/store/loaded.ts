import type {
  MonitorMethod,
  MonitorReply,
  MonitorResult,
  Problem,
} from '../../../shared-types/monitor-api.ts';

/** Something that is fetched: what there is of it now. */
export type Loaded<Value> =
  | { readonly state: 'loading' }
  | { readonly state: 'ready'; readonly value: Value }
  | { readonly state: 'failed'; readonly problem: Problem };

export const loading: Loaded<never> = { state: 'loading' };

/** What the monitor's answer makes of it. */
export function loadedOf<M extends MonitorMethod>(reply: MonitorReply<M>): Loaded<MonitorResult<M>> {
  return reply.ok ? { state: 'ready', value: reply.result } : { state: 'failed', problem: reply.problem };
}

/** The value if it is there. */
export function readyValue<Value>(loaded: Loaded<Value> | undefined): Value | undefined {
  return loaded?.state === 'ready' ? loaded.value : undefined;
}
