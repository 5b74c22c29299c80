/** The loop as the difference control sees it. */
export interface ControlledLoop {
  readonly areaM2: number;
  readonly heatRemovalFactor: number;
  readonly lossWM2K: number;
  /** Mass flow times heat capacity [W/K]. */
  readonly capacityRateWK: number;
}

/**
 * Least start difference with which the pump does not stop again at once [K].
 *
 * A pan that has stood still is dT_on warmer than the store. Once water flows, that heat,
 * A FR UL dT_on, must still raise the water by more than the stop difference:
 * dT_off <= (A FR UL / m cp) dT_on. It looks at a pan without heat capacity, the worst case.
 *
 * Source: Duffie & Beckman, Solar Engineering of Thermal Processes, section 10.4, from memory and derived
 * again.
 */
export function leastStartDifferenceK(loop: ControlledLoop, stopDifferenceK: number): number {
  return (stopDifferenceK * loop.capacityRateWK) / (loop.areaM2 * loop.heatRemovalFactor * loop.lossWM2K);
}
