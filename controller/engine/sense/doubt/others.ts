import type { Channel } from '../../../../shared-types/channels.ts';
import { leastTrustedOffsetK } from '../../pair/learn.ts';
import type { Situation } from '../../situation.ts';
import { agree, type Comparison, saidBy } from './comparison.ts';

/** Water that lies below is not warmer than this over what lies above [K], sensors included. */
const inversionK = 2.5;

interface Layer {
  readonly channel: Channel;
  /** Without it the others stand in order. */
  readonly restStands: boolean;
}

/** What lies below is not much warmer than what lies above; of a layer that says nothing that cannot be told. */
function stands(lowerC: number | null, upperC: number | null): boolean {
  return lowerC === null || upperC === null || lowerC <= upperC + inversionK;
}

/** Warm water rises: no part of a store is warmer than what lies above it. */
export const storeOrder: Comparison = {
  name: 'store-order',
  looks: 60,
  looksToClear: 1440,
  judge: ({ readings }) => {
    const bottomC = saidBy(readings, 'storeBottomC');
    const middleC = saidBy(readings, 'storeMiddleC');
    const topC = saidBy(readings, 'storeTopC');
    if (Number(bottomC === null) + Number(middleC === null) + Number(topC === null) > 1) return null;
    const withoutBottom = stands(middleC, topC);
    const withoutMiddle = stands(bottomC, topC);
    const withoutTop = stands(bottomC, middleC);
    if (withoutBottom && withoutMiddle && withoutTop) return agree;
    const known: Layer[] = [];
    if (bottomC !== null) known.push({ channel: 'storeBottomC', restStands: withoutBottom });
    if (middleC !== null) known.push({ channel: 'storeMiddleC', restStands: withoutMiddle });
    if (topC !== null) known.push({ channel: 'storeTopC', restStands: withoutTop });
    // One without which the others stand in order; where that does not tell, each of them.
    const odd = known.filter(({ restStands }) => restStands);
    return (odd.length > 0 ? odd : known).map(({ channel }) => channel);
  },
};

/** A pair whose learnt offset lies beyond what two sound sensors may disagree by. */
export const pairOffsetTooLarge: Comparison = {
  name: 'pair-offset',
  looks: 1,
  looksToClear: 1,
  judge: ({ state: { learnt }, readings }: Situation) => {
    const { outletOffsetK } = learnt;
    if (outletOffsetK === undefined || readings.panOutletC === undefined) return null;
    return Math.abs(outletOffsetK) < leastTrustedOffsetK ? agree : ['panOutletC', 'storeBottomC'];
  },
};
