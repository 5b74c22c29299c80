import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { EngineState } from '../state.ts';
import { usualLossWM2K } from '../want/collector.ts';
import { waterDensityKgM3, waterHeatJKgK } from '../water.ts';
import { heatRemovalFactor } from './heat-removal.ts';

/** Efficiency factor of water that flows below the whole sheet, 0 to 1; in the usual order, from memory. */
const usualEfficiencyFactor = 0.93;
/** The water whose capacity is meant [°C]; between 10 and 60 °C it matters by 1 %. */
const usualWaterC = 30;

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

export interface Stability {
  readonly holds: boolean;
  /** The least start difference that satisfies the condition with this stop difference [K]. */
  readonly leastStartDifferenceK: number;
}

/** The condition for a loop at full flow, as learnt or else as rated. */
export function stabilityOf(site: Site, settings: Settings, learnt: EngineState['learnt']): Stability {
  const flowLMin = learnt['fullFlowLMin'] ?? site.pump.ratedFlowLMin;
  const flow = {
    areaM2: site.pan.wettedAreaM2,
    lossWM2K: usualLossWM2K,
    capacityRateWK: (flowLMin / 60_000) * waterDensityKgM3(usualWaterC) * waterHeatJKgK(usualWaterC),
    efficiencyFactor: usualEfficiencyFactor,
  };
  const loop = { ...flow, heatRemovalFactor: heatRemovalFactor(flow) };
  const leastK = roundedUp(leastStartDifferenceK(loop, settings.stopDifferenceK));
  return { holds: settings.startDifferenceK >= leastK, leastStartDifferenceK: leastK };
}

/** To a tenth, so that every JavaScript engine says the same. */
function roundedUp(valueK: number): number {
  return Math.ceil(valueK * 10 - 1e-6) / 10;
}
