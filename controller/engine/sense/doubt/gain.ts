import { panVolumeL } from '../../pan.ts';
import type { Situation } from '../../situation.ts';
import { waterDensityKgM3, waterHeatJKgK } from '../../water.ts';
import { good } from '../facts.ts';

/**
 * Outer bounds of what a bare sheet takes up and gives away, design choices: all the sun there is, the loss of
 * a windy day, and a clear sky at night, of which a black surface loses 40 to 80 W/m2 (published net radiation
 * of clear nights).
 */
const mostSunWM2 = 1100;
const mostLossWM2K = 25;
const mostSkyWM2 = 100;
/** How far the air may be from the water while nobody measures it [K]. */
const unknownAirK = 15;
/** A pan of water is changed this often before what it held at first is gone; a design choice. */
const flushingTurnovers = 3;
const leastFlushingMs = 45 * 60_000;

/** Least and most that water may gain on its way through the pan [K]; the least is below nought. */
export interface GainBounds {
  readonly leastK: number;
  readonly mostK: number;
}

export function gainBounds({ facts, state, site }: Situation, waterC: number, isDark: boolean): GainBounds {
  const flowLMin = Math.max(state.outputs.pumpFraction, 0.1) * site.pump.ratedFlowLMin;
  const streamWK = (flowLMin / 60_000) * waterDensityKgM3(waterC) * waterHeatJKgK(waterC);
  const { ambientC } = facts;
  const warmerK = ambientC === null ? unknownAirK : Math.max(0, ambientC - waterC);
  const colderK = ambientC === null ? unknownAirK : Math.max(0, waterC - ambientC);
  const perWM2 = site.pan.wettedAreaM2 / streamWK;
  return {
    leastK: -perWM2 * (mostSkyWM2 + mostLossWM2K * colderK),
    mostK: perWM2 * ((isDark ? 0 : mostSunWM2) + mostLossWM2K * warmerK),
  };
}

/** True when the pan circulates for so long that what it held at first is gone. */
export function isFlushed({ state: { phase }, site, runMs }: Situation): boolean {
  if (phase.name !== 'circulating') return false;
  const turnoverMs = (panVolumeL(site) * 60_000) / site.pump.ratedFlowLMin;
  return runMs - phase.sinceMs >= Math.max(leastFlushingMs, flushingTurnovers * turnoverMs);
}

/** Least share of the rated flow that has to be measured, where it is, for temperatures of a stream to count. */
const leastFlowFraction = 0.3;

/** False where a flow sensor says that next to nothing flows, or cannot be trusted. */
export function flows({ readings, site }: Situation): boolean {
  if (site.sensors.flowLMin === undefined) return true;
  return (good(readings.flowLMin) ?? 0) >= leastFlowFraction * site.pump.ratedFlowLMin;
}
