import {
  eachStep,
  hottestStoreC,
  type Invariant,
  isKeptWarm,
  isPumping,
  keepWarmException,
} from './invariant.ts';

export const fullStoreTakesNothing: Invariant = {
  name: 'full-store-takes-nothing',
  promise:
    'While any usable store reading is at the store limit or at what the store stands, whichever is lower, no pump brings heat.',
  exceptions: [keepWarmException],
  watch: eachStep((seen, { site, settings }) => {
    const limitC = Math.min(settings.storeLimitC, site.store.maximumC);
    const storeC = hottestStoreC(seen.decision);
    if (storeC === null || storeC < limitC || isKeptWarm(seen, site)) return;
    return isPumping(seen.decision) ? `pumping with the store at ${storeC} of ${limitC}` : undefined;
  }),
};
