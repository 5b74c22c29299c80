export interface CollectorFlow {
  /** Mass flow times heat capacity [W/K], 0 or more. */
  readonly capacityRateWK: number;
  readonly areaM2: number;
  readonly lossWM2K: number;
  readonly efficiencyFactor: number;
}

/**
 * Collector flow factor F'', 0 to 1: what the water loses in warmth by flowing through.
 *
 * (m cp / A UL F')(1 - exp(-A UL F' / m cp)); towards 1 with a large flow.
 * Source: Duffie & Beckman, section 6.7.
 */
export function flowFactor(flow: CollectorFlow): number {
  if (flow.capacityRateWK === 0) return 0;
  const passes = (flow.areaM2 * flow.lossWM2K * flow.efficiencyFactor) / flow.capacityRateWK;
  return passes === 0 ? 1 : -Math.expm1(-passes) / passes;
}

/** Heat removal factor FR = F' F'', 0 to 1: useful heat over that of a sheet at the inlet's temperature. */
export function heatRemovalFactor(flow: CollectorFlow): number {
  return flow.efficiencyFactor * flowFactor(flow);
}
