import type { Problem } from '../../../shared-types/monitor-api.ts';

/** Something that is fetched: what there is of it now. */
export type Loaded<Value> =
  | { readonly state: 'loading' }
  | { readonly state: 'ready'; readonly value: Value }
  | { readonly state: 'failed'; readonly problem: Problem };

export const loading: Loaded<never> = { state: 'loading' };

/** The value if it is there. */
export function readyValue<Value>(loaded: Loaded<Value> | undefined): Value | undefined {
  return loaded?.state === 'ready' ? loaded.value : undefined;
}
