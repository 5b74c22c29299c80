import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { EngineState } from '../state.ts';
import { waterDensityKgM3, waterHeatJKgK } from '../water.ts';

/**
 * What a bare sheet loses [W/m2K] in a wind of 2 m/s, and the efficiency factor of water that flows below
 * the whole of it. Middles of ranges from memory (8 to 15 W/m2K, and 2 to 5 for each metre a second).
 */
const usualLossWM2K = 18.5;
const usualEfficiencyFactor = 0.93;
/** The water whose capacity is meant [°C]; between 10 and 60 °C it matters by 1 %. */
const usualWaterC = 30;

/** A collector and the water that streams through it. */
export interface Stream {
  readonly areaM2: number;
  readonly lossWM2K: number;
  /** Mass flow times heat capacity [W/K]. */
  readonly streamWK: number;
}

/**
 * Heat removal factor of a collector, 0 to 1.
 *
 * @param efficiencyFactor - F', 0 to 1.
 *
 * Source: Duffie & Beckman, Solar Engineering of Thermal Processes, section 6.7; from memory.
 */
export function removalFactor({ areaM2, lossWM2K, streamWK }: Stream, efficiencyFactor: number): number {
  const lossWK = areaM2 * lossWM2K;
  return (streamWK / lossWK) * -Math.expm1((-lossWK * efficiencyFactor) / streamWK);
}

/**
 * Share of the start difference that the stop difference may have at most, so that a pump which starts at
 * stagnation is not stopped by its own cold water.
 *
 * Source: Duffie & Beckman, section 10.4, from memory: dT_off <= (A FR UL / (m cp)) dT_on. Follows from the
 * heat at stagnation, A FR UL dT_on, that has to warm the stream by more than dT_off.
 */
export function stableFraction({ areaM2, lossWM2K, streamWK }: Stream, removal: number): number {
  return (areaM2 * removal * lossWM2K) / streamWK;
}

export interface Stability {
  readonly holds: boolean;
  /** The least start difference that satisfies the condition with this stop difference [K]. */
  readonly leastStartDifferenceK: number;
}

/** The condition for a loop at full flow, as learnt or else as rated. */
export function stabilityOf(site: Site, settings: Settings, learnt: EngineState['learnt']): Stability {
  const flowLMin = learnt['fullFlowLMin'] ?? site.pump.ratedFlowLMin;
  const streamWK = (flowLMin / 60_000) * waterDensityKgM3(usualWaterC) * waterHeatJKgK(usualWaterC);
  const stream = { areaM2: site.pan.wettedAreaM2, lossWM2K: usualLossWM2K, streamWK };
  const fraction = stableFraction(stream, removalFactor(stream, usualEfficiencyFactor));
  const leastStartDifferenceK = roundedUp(settings.stopDifferenceK / fraction);
  return { holds: settings.startDifferenceK >= leastStartDifferenceK, leastStartDifferenceK };
}

/** To a tenth, so that every JavaScript engine says the same. */
function roundedUp(valueK: number): number {
  return Math.ceil(valueK * 10 - 1e-6) / 10;
}
