import type { EngineState } from '../state.ts';

type Learnt = EngineState['learnt'];

/**
 * Standard deviation of what two sensors disagree by while nobody compared them [K]; a design choice: two
 * cheap sensors may disagree by 1.0 to 1.2 K.
 */
export const uncomparedSdK = 1;

/** What the pan outlet shows more than the store bottom when both are alike, and how well that is known [K]. */
export interface PairOffset {
  readonly offsetK: number;
  readonly sdK: number;
}

const uncompared: PairOffset = { offsetK: 0, sdK: uncomparedSdK };

/** The pair's offset as it was learnt; nought, with the spread of sensors that nobody compared, before that. */
export function pairOffset({ outletOffsetK, outletOffsetSdK }: Learnt): PairOffset {
  if (outletOffsetK === undefined || outletOffsetSdK === undefined) return uncompared;
  return { offsetK: outletOffsetK, sdK: Math.min(outletOffsetSdK, uncomparedSdK) };
}
