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

/** Puts the answer in once it comes. What is there already stays until then: no flicker on a refresh. */
export async function loadInto<M extends MonitorMethod>(
  before: Loaded<unknown> | undefined | null,
  put: (entry: Loaded<MonitorResult<M>>) => void,
  asked: Promise<MonitorReply<M>>,
): Promise<void> {
  if (before?.state !== 'ready') put(loading);
  put(loadedOf(await asked));
}

/** The value if it is there. */
export function readyValue<Value>(loaded: Loaded<Value> | undefined): Value | undefined {
  return loaded?.state === 'ready' ? loaded.value : undefined;
}
