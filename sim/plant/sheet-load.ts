import { netIrradianceWM2, opticalFraction, sheetLossWM2K } from '../physics/collector.ts';
import type { Conditions } from '../weather/conditions.ts';
import { blackBodyWM2 } from '../weather/sky.ts';
import type { Impairments } from './impairments.ts';
import { sheetSunWM2 } from './sheet-sun.ts';
import { snowCover } from './snow.ts';
import type { PlantState } from './state.ts';
import { waterJKgK } from './water.ts';

/** What acts on every square metre of sheet in a step. */
export interface SheetLoad {
  readonly gainWM2: number;
  readonly airC: number;
  readonly airWM2K: number;
  /** To snow that melts at 0 °C. */
  readonly snowWM2K: number;
  /** From sheet to water, where the sheet is the warmer and where it is the colder. */
  readonly warmContactWM2K: number;
  readonly coldContactWM2K: number;
}

/** Heat that a millimetre of rain an hour takes along for each kelvin [W/m2K]. */
const rainWM2KPerMmH = waterJKgK / 3600;

/**
 * Puts sun, sky, air, rain, snow and contact together.
 *
 * The collector's coefficients speak of the water; here they act on the sheet, which is warmer by what it
 * takes to pass the heat on. With the conductance h between them and the loss U of the form, both gain and
 * loss of the sheet are larger by 1 / (1 - U/h), so that at the rated flow and full contact the water gets
 * what the form says, less what goes through the walls, and less again with a worse contact. Where that would
 * gather more than all that falls on the sheet, the gain stops at all of it.
 *
 * @param flowFraction - Flow over the rated flow, 0 and more.
 */
export function sheetLoadOf(
  state: PlantState,
  weather: Conditions,
  impairments: Impairments,
  flowFraction: number,
): SheetLoad {
  const { parts } = state;
  const { traits, collector } = parts;
  const snow = snowCover(state.snowKgM2);
  const { airC } = weather;
  const formWM2K = sheetLossWM2K(weather.windMs, collector);
  const stretch = 1 / (1 - Math.min(0.8, formWM2K / traits.contactWM2K));
  // A report's loss holds what goes down; that is booked where it goes.
  const upWM2K = Math.max(0, formWM2K - traits.insulationWM2K);
  const openWM2K = upWM2K * stretch + rainWM2KPerMmH * weather.rainMmH;
  const throughSnow = 1 / (1 + openWM2K * snow.resistanceM2KW);
  const blackWM2 = blackBodyWM2(airC);
  const longWaveWM2 = blackWM2 + (weather.longWaveWM2 - blackWM2) * throughSnow;
  const netWM2 = netIrradianceWM2(
    {
      irradianceWM2: sheetSunWM2(weather, parts) * impairments.sunFraction * snow.sunFraction,
      longWaveWM2,
      airC,
    },
    collector,
  );
  const airFraction = 1 - (1 - state.airFraction) * (1 - impairments.airPocketFraction);
  const contactWM2K = traits.contactWM2K * traits.contactFraction * (1 - airFraction);
  const rest = traits.restContactFraction;
  return {
    gainWM2: netWM2 * atMostAll(opticalFraction(weather.windMs, collector) * stretch),
    airC,
    airWM2K: openWM2K * throughSnow,
    snowWM2K: snow.meltWM2K,
    warmContactWM2K: contactWM2K * (rest + (1 - rest) * Math.sqrt(Math.min(1, flowFraction))),
    coldContactWM2K: contactWM2K,
  };
}

/** So close to all that falls on it a sheet begins to gather less than its coefficients promise. A design choice. */
const roundedFraction = 0.04;

/**
 * No sheet gathers more than all that falls on it. A parabola rounds the corner, so that what a sheet gathers changes
 * smoothly with wind and coefficients; further from it than the rounding nothing is changed.
 */
function atMostAll(fraction: number): number {
  const intoCorner = fraction - (1 - roundedFraction);
  if (intoCorner <= 0) return fraction;
  if (intoCorner >= 2 * roundedFraction) return 1;
  return fraction - intoCorner ** 2 / (4 * roundedFraction);
}
