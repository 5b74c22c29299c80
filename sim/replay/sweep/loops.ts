import type { LoopFit } from '../../../shared-types/tuning.ts';
import type { PossibleLoop } from '../../identify/possible-loop.ts';
import { possibleLoops } from '../live-again/possible-loops.ts';

/** Which loops a sweep is tried in, and where they came from. */
export interface Loops {
  /** The best-known loop, then those drawn from what is uncertain of it. */
  readonly loops: readonly PossibleLoop[];
  readonly remarks: readonly string[];
}

/** The loops in which a single day is lived again as well: the same seed draws the same. */
export function loopsOf(fit: LoopFit | undefined, drawn: number, seed: number): Loops {
  const remark =
    fit === undefined
      ? 'No fit of this loop is kept: it is taken for a usual one, and the bands are those of usual ones.'
      : `The loop is that of the fit to ${fit.days.join(', ')}.`;
  return { loops: possibleLoops(fit ?? null, drawn, seed), remarks: [remark] };
}
