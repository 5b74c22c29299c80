import { type CollectorCoefficients, sheetGainWM2, sheetLossWM2K } from '../physics/collector.ts';
import { longWaveWM2, swinbankEmissivity } from '../weather/sky.ts';

/** Wind that is taken where none is measured [m/s]; a design choice. */
const usualWindMs = 2;
/** Below this much of a clear sky nothing can be told of the clouds [W/m2]; a design choice. */
const leastLightWM2 = 100;

/** What was read at one step; null where it was not. */
export interface Moment {
  readonly airC: number;
  readonly storeBottomC: number;
  /** Irradiance that counts, and what a clear sky would send now. */
  readonly irradianceWM2: number;
  readonly clearWM2: number;
  readonly windMs: number | null;
  readonly longWaveWM2: number | null;
}

/**
 * Heat that a full sheet as cool as the store bottom would gain [W/m2], never below 0: such a pan would be emptied.
 *
 * Source: the steady unglazed form of sim/physics/collector.ts. Where the sky is not measured, Swinbank's clear
 * sky stands for it, closed by cloud as far as the sun falls short of a clear one; the latter is a design choice.
 */
export function allowedGainWM2(moment: Moment, collector: CollectorCoefficients): number {
  const { airC, storeBottomC, irradianceWM2 } = moment;
  const windMs = moment.windMs ?? usualWindMs;
  const skyWM2 = moment.longWaveWM2 ?? longWaveWM2(airC, swinbankEmissivity(airC), cloudFraction(moment));
  const gainWM2 = sheetGainWM2({ irradianceWM2, longWaveWM2: skyWM2, windMs, airC }, collector);
  return Math.max(0, gainWM2 - sheetLossWM2K(windMs, collector) * (storeBottomC - airC));
}

function cloudFraction({ irradianceWM2, clearWM2 }: Moment): number {
  return clearWM2 < leastLightWM2 ? 0 : Math.min(1, Math.max(0, 1 - irradianceWM2 / clearWM2));
}
