import type { FitRead } from '../../identify/loop-file.ts';
import type { PossibleLoop } from '../../identify/possible-loop.ts';
import { possibleLoops } from '../live-again/possible-loops.ts';

/** Which loops a sweep is tried in, and where they came from. */
export interface Loops {
  /** The best-known loop, then those drawn from what is uncertain of it. */
  readonly loops: readonly PossibleLoop[];
  readonly remarks: readonly string[];
}

/** The loops in which a single day is lived again as well: the same seed draws the same. */
export function loopsOf(read: FitRead, drawn: number, seed: number): Loops {
  const remark = read.ok
    ? `The loop is that of the fit to ${read.fit.days.join(', ')}.`
    : `No fit of this loop is used, since ${read.why}: it is taken for a usual one, and the bands are those of usual ones.`;
  return { loops: possibleLoops(read.ok ? read.fit : null, drawn, seed), remarks: [remark] };
}
