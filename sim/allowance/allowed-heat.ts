import { clearSkyWM2, sunHeightDeg } from '../../controller/engine/sun/position.ts';
import { holeMs } from '../../controller/log/day-book.ts';
import { localDaysOf } from '../../controller/log/local-day.ts';
import type { AllowedHeat } from '../../shared-types/allowed-heat.ts';
import type { DayCurves } from '../../shared-types/log.ts';
import type { Site } from '../../shared-types/site.ts';
import type { CollectorCoefficients } from '../physics/collector.ts';
import { usualTraits } from '../plant/traits.ts';
import { allowedGainWM2 } from './allowed-gain.ts';

/** Share of the light so far that has to be in the log before the two heats are compared; a design choice. */
export const leastCoveredFraction = 0.9;
/** Light of a clear sky before which nothing can be said of a day [J/m2]: 0.1 kWh/m2, a design choice. */
const leastLightJM2 = 3.6e5;
/** The clear day is summed in steps of so long [ms]. */
const lightStepMs = 300_000;

/**
 * What the weather of a day allowed up to its newest step: the heat that a pan would have gained that was always
 * full of water as cool as the store bottom, by the sheet's usual figures.
 *
 * Without a sensor of the sun a clear sky is taken in its place (Haurwitz 1945), which is the most that it can
 * have been, but for some haze and bright clouds. Steps where something needed was not read are left out, and
 * where too many are, nothing is told.
 *
 * @param curves - The whole day as far as it was logged, in the order of its steps.
 */
export function allowedHeat(
  curves: DayCurves,
  site: Site,
  collector: CollectorCoefficients = usualTraits,
): AllowedHeat {
  if (site.sensors.ambientC === undefined) return { state: 'no-air-sensor' };
  const untilMs = curves.atMs.at(-1);
  const lightJM2 = untilMs === undefined ? 0 : clearLightJM2(curves.day, untilMs, site);
  if (untilMs === undefined || lightJM2 < leastLightJM2) return { state: 'no-sun-yet' };
  const { gainJM2, seenJM2 } = sums(curves, site, collector);
  const coveredFraction = Math.min(1, seenJM2 / lightJM2);
  if (coveredFraction < leastCoveredFraction) return { state: 'too-little-logged', coveredFraction };
  return {
    state: 'told',
    day: curves.day,
    sun: site.sensors.irradianceWM2 === undefined ? 'clear-sky' : 'measured',
    untilMs,
    allowedJ: gainJM2 * site.pan.grossAreaM2,
    heatHomeJ: curves.heatTodayJ.at(-1) ?? 0,
  };
}

const clearWM2At = (atMs: number, site: Site) => clearSkyWM2(sunHeightDeg(atMs, site.location));

/** Light of a clear sky from the day's beginning on [J/m2]. */
function clearLightJM2(day: string, untilMs: number, site: Site): number {
  let sumJM2 = 0;
  for (let atMs = localDaysOf(site.timeZone).boundsOf(day).fromMs; atMs < untilMs; atMs += lightStepMs) {
    const stepMs = Math.min(lightStepMs, untilMs - atMs);
    sumJM2 += (clearWM2At(atMs + stepMs / 2, site) * stepMs) / 1000;
  }
  return sumJM2;
}

/** Gain, and light of a clear sky, over the steps where all that is needed was read. */
function sums({ atMs, series }: DayCurves, site: Site, collector: CollectorCoefficients) {
  let [gainJM2, seenJM2] = [0, 0];
  for (let row = 0; row + 1 < atMs.length; row++) {
    const at = atMs[row] as number;
    const passedMs = (atMs[row + 1] as number) - at;
    if (passedMs <= 0 || passedMs > holeMs) continue;
    const read = (channel: keyof typeof series) => series[channel]?.[row] ?? null;
    const clearWM2 = clearWM2At(at, site);
    const [airC, storeBottomC] = [read('ambientC'), read('storeBottomC')];
    const irradianceWM2 = site.sensors.irradianceWM2 === undefined ? clearWM2 : read('irradianceWM2');
    if (airC === null || storeBottomC === null || irradianceWM2 === null) continue;
    const others = { windMs: read('windMs'), longWaveWM2: read('longWaveWM2') };
    const moment = { airC, storeBottomC, irradianceWM2, clearWM2, ...others };
    gainJM2 += (allowedGainWM2(moment, collector) * passedMs) / 1000;
    seenJM2 += (clearWM2 * passedMs) / 1000;
  }
  return { gainJM2, seenJM2 };
}
