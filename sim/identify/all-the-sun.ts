import type { TraitName } from '../plant/traits.ts';
import { usualTraits } from '../plant/traits.ts';
import type { Stretch } from './model/stretch.ts';
import type { Posterior } from './posterior.ts';

/** Minutes with more light than this count [W/m2]. */
const brightWM2 = 250;

export const allTheSunWords =
  'in the wind of these days the sheet gathers all the sun that there is, whatever its efficiency';

/**
 * True where the sheet of the model gathers all the sun that falls on it, or would with an efficiency two standard
 * deviations of what is known beforehand above the found one: then no day can tell how high the efficiency is.
 *
 * The model's sheet gathers eta / (1 - U/h) of it and never more than all, U the loss in the mean wind of bright
 * minutes and h the contact from sheet to water.
 */
export function gathersAllTheSun({ known, values }: Posterior, stretches: readonly Stretch[]): boolean {
  const found = (name: TraitName) =>
    values[known.findIndex(({ trait }) => trait === name)] ?? usualTraits[name];
  const lossWM2K = found('stillLossWM2K') + found('windLossJM3K') * brightWindMs(stretches);
  const stretch = 1 / (1 - Math.min(0.8, lossWM2K / found('contactWM2K')));
  const sd = known.find(({ trait }) => trait === 'opticalEfficiency')?.sd ?? 0;
  return (found('opticalEfficiency') + 2 * sd) * stretch > 1;
}

function brightWindMs(stretches: readonly Stretch[]): number {
  const bright = stretches.flatMap(({ conditions }) =>
    conditions.filter(({ irradianceWM2 }) => irradianceWM2 > brightWM2),
  );
  return bright.reduce((sum, { windMs }) => sum + windMs, 0) / Math.max(1, bright.length);
}
