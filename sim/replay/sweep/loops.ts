import type { LoopFit } from '../../../shared-types/tuning.ts';
import type { Traits } from '../../plant/traits.ts';
import { sampledTraits } from '../live-again/sampled-traits.ts';

/** Which loops a sweep is tried in, and where they came from. */
export interface Loops {
  /** The best-known loop, then those drawn from what is uncertain of it. */
  readonly loops: readonly Partial<Traits>[];
  readonly remarks: readonly string[];
}

/** The loops in which a single day is lived again as well: the same seed draws the same. */
export function loopsOf(fit: LoopFit | undefined, drawn: number, seed: number): Loops {
  const remark =
    fit === undefined
      ? 'No fit of this loop is kept: it is taken for a usual one, and the bands are those of usual ones.'
      : `The loop is that of the fit to ${fit.days.join(', ')}.`;
  return { loops: sampledTraits(fit ?? null, drawn, seed), remarks: [remark] };
}
