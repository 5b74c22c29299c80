import { leastStartDifferenceK } from '../../controller/engine/pair/stability.ts';
import type { Settings } from '../../shared-types/settings.ts';
import { sheetGainWM2 } from '../physics/collector.ts';
import type { Parts } from '../plant/parts.ts';
import { waterKgL } from '../plant/water.ts';
import { blackBodyWM2 } from '../weather/sky.ts';
import { factorsOf, lightMs } from './pan-section.ts';
import { figure, type Section, warnIf } from './report.ts';
import type { Trial } from './trial.ts';

/** One watt a square metre, the sky as warm as the air. */
const wattOfSun = { irradianceWM2: 1, longWaveWM2: blackBodyWM2(20), windMs: lightMs, airC: 20 };

/** Whether start and stop difference suit the loop's flow. */
export function controlSection(
  parts: Parts,
  grossM2: number,
  settings: Settings,
  { loopLMin }: Trial,
): Section {
  const { startDifferenceK, stopDifferenceK } = settings;
  const title = 'Start and stop';
  if (loopLMin === 0) return { title, figures: [], warnings: [] };
  const loop = factorsOf(parts, grossM2, loopLMin);
  const leastK = leastStartDifferenceK(loop, stopDifferenceK);
  const renewMin = parts.pan.fullKg / waterKgL / loopLMin;
  const runWM2 =
    (stopDifferenceK * loop.capacityRateWK) /
    (parts.pan.sheetM2 * loop.flowFactor * sheetGainWM2(wattOfSun, parts.collector));
  return {
    title,
    figures: [
      figure(
        'Least start difference that runs on by itself',
        leastK,
        'K',
        `At 1 m/s, for a stop difference of ${stopDifferenceK} K; the setting is ${startDifferenceK} K.`,
      ),
      figure(
        'Net sun that keeps the pump running',
        runWM2,
        'W/m2',
        'With the store at air temperature: then the water warms by the stop difference on its way.',
      ),
      figure('Water of the pan renewed in', renewMin, 'min', 'How long its stored heat carries a run.'),
    ],
    warnings: warnIf(
      startDifferenceK < leastK,
      'start-difference',
      `A start difference of ${startDifferenceK} K is below the ${leastK.toFixed(1)} K of the textbook rule: with ` +
        `less sun than ${runWM2.toFixed(0)} W/m2 net the pump runs for about ${renewMin.toFixed(0)} min at a time, ` +
        'on heat stored in the pan. Less flow or a smaller stop difference makes longer runs.',
    ),
  };
}
