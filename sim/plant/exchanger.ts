import type { PlantState } from './state.ts';
import { letIntoStore } from './store.ts';
import { at, cellJK, waterJKgK } from './water.ts';

/**
 * Passes heat from the drain-back reservoir to the store.
 *
 * With its pump on, store water goes from the bottom through the exchanger and back to its like:
 * effectiveness 1 - exp(-NTU), the reservoir being one mixed body. At rest the exchanger warms the bottom
 * layer alone. Implicit in the reservoir's temperature.
 *
 * @returns Heat that went into the store [J], negative when the store is the warmer.
 */
export function exchangeHeat(state: PlantState, pumpOn: boolean, dtS: number): number {
  const { reservoir, store, parts } = state;
  if (reservoir === null) return 0;
  const bottom = store.massKg.length - 1;
  const bottomKg = at(store.massKg, bottom);
  const reservoirJK = cellJK(reservoir, 0);
  if (bottomKg === 0 || reservoirJK === 0) return 0;
  const aboveK = at(reservoir.waterC, 0) - at(store.waterC, bottom);
  const throughKg = pumpOn ? Math.min(0.5 * bottomKg, parts.pump.ratedKgS * dtS) : 0;
  const conductanceWK = parts.reservoir.exchangerWK * (pumpOn ? 1 : parts.traits.restExchangeFraction);
  const reachJK = pumpOn
    ? -Math.expm1((-conductanceWK * dtS) / (throughKg * waterJKgK)) * throughKg * waterJKgK
    : conductanceWK * dtS;
  const heatJ =
    (reachJK * aboveK) / (1 + reachJK / reservoirJK + (pumpOn ? 0 : reachJK / cellJK(store, bottom)));
  reservoir.waterC[0] = at(reservoir.waterC, 0) - heatJ / reservoirJK;
  if (!pumpOn) {
    store.waterC[bottom] = at(store.waterC, bottom) + heatJ / cellJK(store, bottom);
    return heatJ;
  }
  store.massKg[bottom] = bottomKg - throughKg;
  letIntoStore(store, throughKg, at(store.waterC, bottom) + heatJ / (throughKg * waterJKgK));
  return heatJ;
}
