import type { TraitName } from '../plant/traits.ts';
import { usualTraits } from '../plant/traits.ts';
import type { Stretch } from './model/stretch.ts';
import type { Posterior } from './posterior.ts';

/** Minutes with more light than this are bright; a day without any has no sun to speak of [W/m2]. */
export const brightWM2 = 250;

export const allTheSunWords =
  'in the wind of these days the sheet gathers all the sun that there is, whatever its efficiency';

/**
 * True where the sheet of the model gathers all the sun that falls on it: then its efficiency changes nothing.
 *
 * It gathers eta (1 - bu u) / (1 - U/h) of it and never more than all, U the loss in the mean wind u of bright minutes
 * and h the contact from sheet to water.
 */
export function gathersAllTheSun({ known, values }: Posterior, stretches: readonly Stretch[]): boolean {
  const found = (name: TraitName) =>
    values[known.findIndex(({ trait }) => trait === name)] ?? usualTraits[name];
  const windMs = brightWindMs(stretches);
  const lossWM2K = found('stillLossWM2K') + found('windLossJM3K') * windMs;
  const gathered = found('opticalEfficiency') * Math.max(0, 1 - found('windOpticalSM') * windMs);
  return gathered > 1 - Math.min(0.8, lossWM2K / found('contactWM2K'));
}

function brightWindMs(stretches: readonly Stretch[]): number {
  const bright = stretches.flatMap(({ conditions }) =>
    conditions.filter(({ irradianceWM2 }) => irradianceWM2 > brightWM2),
  );
  return bright.reduce((sum, { windMs }) => sum + windMs, 0) / Math.max(1, bright.length);
}
