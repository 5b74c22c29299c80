import type { Site } from '../../../shared-types/site.ts';

/** Another pan, pump or store, or another place, is another loop; other sensors or limits are not. */
export function sameLoop(a: Site, b: Site): boolean {
  return loopOf(a) === loopOf(b);
}

const loopOf = ({ pan, pump, store, plumbing, outlet, drain, location }: Site) =>
  JSON.stringify([pan, pump, store, plumbing, outlet, drain, location]);
