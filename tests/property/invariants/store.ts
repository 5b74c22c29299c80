import type { Site } from '../../../shared-types/site.ts';
import { hasFlow } from './heat-dump.ts';
import {
  eachStep,
  hottestStoreC,
  type Invariant,
  isKeptWarm,
  isPumping,
  keepWarmException,
  type Seen,
} from './invariant.ts';

export const fullStoreTakesNothing: Invariant = {
  name: 'full-store-takes-nothing',
  promise:
    'While any usable store reading is at the store limit or at what the store stands, whichever is lower, no pump brings heat.',
  exceptions: [
    keepWarmException,
    'Heat that is dumped: the return passes the radiator, but for the step in which the pump starts and while a measured flow is missing.',
    'Cooling the store by night, where it is chosen: the full pan is then no warmer than the stop difference above the store bottom.',
  ],
  watch: eachStep((seen, { site, settings }) => {
    const limitC = Math.min(settings.storeLimitC, site.store.maximumC);
    const storeC = hottestStoreC(seen.decision);
    if (storeC === null || storeC < limitC || isKeptWarm(seen, site)) return;
    if (isDumping(seen, site)) return;
    const { differenceK, water } = seen.decision.belief;
    const brings = water === 'full' && (differenceK === null || differenceK > settings.stopDifferenceK);
    if (seen.state.heat.cooling && settings.nightCooling === 1 && !brings) return;
    return isPumping(seen.decision) ? `pumping with the store at ${storeC} of ${limitC}` : undefined;
  }),
};

/** True while heat is dumped, or about to be. */
function isDumping(seen: Seen, site: Site): boolean {
  const { reasons, outputs } = seen.decision;
  if (site.heatDump === undefined || reasons.phase.code !== 'dumping-heat') return false;
  return outputs.heatDumpOn === true || !hasFlow(seen, site);
}
