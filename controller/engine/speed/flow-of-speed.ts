import type { Site } from '../../../shared-types/site.ts';

/** Head at no flow over the rated head of a small circulating pump; common practice of the trade. */
const shutOffOverRated = 4 / 3;
/** A source stands this far below its top, as a share of a store's height; a design choice. */
const sunkenFraction = 0.5;
/** A loop that runs at all has something left for the flow; a design choice. */
const mostLiftFraction = 0.9;

/** Share of the shut-off head that lifts the water from the source to the pan, where nothing gives it back. */
function liftFraction({ pan, store, pump }: Site): number {
  const liftM = Math.max(0, pan.heightAboveStoreM + sunkenFraction * store.heightM);
  return Math.min(mostLiftFraction, liftM / (shutOffOverRated * pump.ratedHeadM));
}

/**
 * Flow at a speed of the pump over the flow at full speed, 0 to 1.
 *
 * What is left of the head once the water is lifted goes with the square of the flow. A high outlet makes a
 * siphon, which gives the lift back; a low one does not.
 *
 * Source: affinity laws of pumps and the square law of turbulent friction, textbook.
 */
export function flowFraction(site: Site, speedFraction: number): number {
  const lift = site.outlet === 'low' ? liftFraction(site) : 0;
  return Math.sqrt(Math.max(0, (speedFraction * speedFraction - lift) / (1 - lift)));
}

/** Least speed that still moves a share of the full flow, should nothing give back the lift. */
export function speedForFlow(site: Site, leastFlowFraction: number): number {
  const lift = liftFraction(site);
  return Math.sqrt(lift + leastFlowFraction * leastFlowFraction * (1 - lift));
}
