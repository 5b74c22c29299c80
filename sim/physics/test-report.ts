import { stefanBoltzmannWM2K4 } from '../weather/sky.ts';
import type { CollectorCoefficients } from './collector.ts';

/** Wind at which a test report states its coefficients [m/s]. */
const reportWindMs = 3;

/** Coefficients as a test report by ISO 9806:2017 prints them, under the standard's own names. */
export interface ReportCoefficients {
  readonly eta0b: number;
  /** Incidence modifiers of beam and diffuse light. */
  readonly kb: number;
  readonly kd: number;
  /** [W/m2K] */
  readonly a1: number;
  /** [W/m2K2] */
  readonly a2: number;
  /** [J/m3K] */
  readonly a3: number;
  readonly a4: number;
  /** [J/m2K] */
  readonly a5: number;
  /** [s/m] */
  readonly a6: number;
  /** [s/m] */
  readonly a7: number;
  /** [W/m2K4] */
  readonly a8: number;
}

/** What acts on a collector under test. */
export interface TestLoad {
  readonly beamWM2: number;
  readonly diffuseWM2: number;
  readonly longWaveWM2: number;
  readonly windMs: number;
  readonly airC: number;
  /** Mean temperature of the water, and how fast it rises. */
  readonly meanC: number;
  readonly meanKS: number;
}

/**
 * Useful heat of a collector by the quasi-dynamic form of ISO 9806:2017 [W/m2]; the form is from memory.
 *
 * q = eta0b (Kb Gb + Kd Gd) - a1 dT - a2 dT^2 - a3 u' dT + a4 (EL - sigma Ta^4) - a5 dTm/dt - a6 u' G
 *     - a7 u' (EL - sigma Ta^4) - a8 dT^4, dT = Tm - Ta, u' = u - 3 m/s.
 */
export function reportedHeatWM2(load: TestLoad, c: ReportCoefficients): number {
  const overAirK = load.meanC - load.airC;
  const windMs = load.windMs - reportWindMs;
  const skyWM2 = load.longWaveWM2 - stefanBoltzmannWM2K4 * (load.airC + 273.15) ** 4;
  const sunWM2 = c.eta0b * (c.kb * load.beamWM2 + c.kd * load.diffuseWM2);
  const lossWM2 = (c.a1 + c.a2 * overAirK + c.a3 * windMs) * overAirK + c.a8 * overAirK ** 4;
  const windWM2 = windMs * (c.a6 * (load.beamWM2 + load.diffuseWM2) + c.a7 * skyWM2);
  return sunWM2 - lossWM2 + c.a4 * skyWM2 - c.a5 * load.meanKS - windWM2;
}

/**
 * The steady unglazed form, written as a test report would: the same heat, stated at 3 m/s of wind.
 *
 * @param capacityJM2K - Water and sheet over each square metre [J/m2K].
 */
export function reportOf(c: CollectorCoefficients, capacityJM2K: number): ReportCoefficients {
  const windLoss = c.opticalEfficiency * c.windOpticalSM;
  const eta0b = c.opticalEfficiency - windLoss * reportWindMs;
  return {
    eta0b,
    kb: 1,
    kd: 1,
    a1: c.stillLossWM2K + c.windLossJM3K * reportWindMs,
    a2: 0,
    a3: c.windLossJM3K,
    a4: eta0b * c.emissivityRatio,
    a5: capacityJM2K,
    a6: windLoss,
    a7: windLoss * c.emissivityRatio,
    a8: 0,
  };
}
