import type { Absorbed } from '../../../shared-types/absorbed.ts';
import type { Estimate } from '../../../shared-types/tuning.ts';
import { minuteMs } from '../../identify/world/minutes.ts';
import type { LoggedWorld } from '../../identify/world/world.ts';
import { opticalFraction } from '../../physics/collector.ts';
import { sheetSunWM2 } from '../../plant/sheet-sun.ts';
import { estimateOf } from './bands.ts';

const stepMs = 30 * minuteMs;
/** So far to both sides of a step's middle it is averaged over [ms]: what is told of single windows is half noise. A design choice. */
const reachMs = stepMs;

/**
 * Light that each square metre of sheet took up through a day on which no sensor measured the sun: what the heat balance
 * of the pan wants as an input, smoothed over an hour.
 *
 * @param worlds - The day as each of the possible loops has it, the best-known first.
 * @returns null where the sun was measured.
 */
export function absorbedOf(worlds: readonly LoggedWorld[]): Absorbed | null {
  const [first] = worlds;
  if (first === undefined || first.origins.irradiance === 'measured') return null;
  const { fromMs, toMs } = first;
  const takenUp = worlds.map(takenUpBy);
  const steps: Estimate[] = [];
  for (let atMs = fromMs; atMs + stepMs <= toMs; atMs += stepMs)
    steps.push(estimateOf(takenUp.map((mean) => mean(atMs + stepMs / 2))));
  return {
    fromMs,
    stepMs,
    valueWM2: steps.map(({ value }) => value),
    lowWM2: steps.map(({ low }) => Math.max(0, low)),
    highWM2: steps.map(({ high }) => high),
  };
}

/** Mean about an instant [W/m2]. */
function takenUpBy({ begin, weather, fromMs, toMs }: LoggedWorld): (middleMs: number) => number {
  const { parts } = begin();
  return (middleMs) => {
    let sum = 0;
    let count = 0;
    const end = Math.min(toMs, middleMs + reachMs);
    for (let ms = Math.max(fromMs, middleMs - reachMs) + minuteMs; ms <= end; ms += minuteMs) {
      const conditions = weather.at(ms);
      sum += opticalFraction(conditions.windMs, parts.collector) * sheetSunWM2(conditions, parts);
      count++;
    }
    return sum / count;
  };
}
