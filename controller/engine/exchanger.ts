import { hysteresis } from './blocks/hysteresis.ts';
import { good } from './sense/facts.ts';
import type { Situation } from './situation.ts';

/** The reservoir is worth its exchanger when it is this much warmer than the store bottom, until this [K]. */
const beginsK = 1;
const endsK = 0.2;

/**
 * Whether the exchanger pump runs: as long as the reservoir is warmer than the store, whether the pan is in use or
 * was emptied into it; without a sensor in the reservoir while water circulates. Never while a protection acts,
 * though one of frost, which keeps the pan warm from there, may circulate.
 */
export function exchangerRuns(situation: Situation, circulating: boolean, hazardActs: boolean): boolean {
  const { site, readings, state } = situation;
  if (site.plumbing !== 'reservoir') return false;
  const reservoirC = good(readings.reservoirC);
  const storeC = good(readings.storeBottomC);
  if (hazardActs || reservoirC === null || storeC === null) return circulating;
  return hysteresis(state.outputs.exchangerPumpOn, reservoirC - storeC, beginsK, endsK);
}
