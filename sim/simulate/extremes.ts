import type { PlantState } from '../plant/state.ts';
import { at, sum } from '../plant/water.ts';

/** The hottest and coldest of a span; null where there was none. */
export interface Extremes {
  /** Water in the pan, where there was any to speak of. */
  lowestPanC: number | null;
  highestPanC: number | null;
  highestSheetC: number | null;
  highestStoreC: number | null;
  mostIceKg: number;
}

export function createExtremes(): Extremes {
  return { lowestPanC: null, highestPanC: null, highestSheetC: null, highestStoreC: null, mostIceKg: 0 };
}

/** Water shallower than a twentieth of the pan counts as a film. */
const filmFraction = 0.05;

export function lookAt(extremes: Extremes, { pan, store, parts }: PlantState): void {
  for (const [lane, { cellKg }] of [
    [pan.core, parts.pan.core],
    [pan.edge, parts.pan.edge],
  ] as const)
    for (let i = 0; i < lane.massKg.length; i++) {
      extremes.highestSheetC = Math.max(extremes.highestSheetC ?? -Infinity, at(lane.sheetC, i));
      if (at(lane.massKg, i) + at(lane.iceKg, i) < filmFraction * cellKg) continue;
      const waterC = at(lane.waterC, i);
      extremes.lowestPanC = Math.min(extremes.lowestPanC ?? Infinity, waterC);
      extremes.highestPanC = Math.max(extremes.highestPanC ?? -Infinity, waterC);
    }
  extremes.highestStoreC = Math.max(extremes.highestStoreC ?? -Infinity, at(store.waterC, 0));
  extremes.mostIceKg = Math.max(extremes.mostIceKg, sum(pan.core.iceKg) + sum(pan.edge.iceKg));
}
