import type { Channel } from '../../../../shared-types/channels.ts';
import { leastTrustedOffsetK } from '../../pair/learn.ts';
import type { Situation } from '../../situation.ts';
import { agree, type Comparison, saidBy } from './comparison.ts';

/** Water that lies below is not warmer than this over what lies above [K], sensors included. */
const inversionK = 2.5;

interface Layer {
  readonly channel: Channel;
  readonly valueC: number;
}

function isInverted(upwards: readonly Layer[]): boolean {
  return upwards.some((lower, i) =>
    upwards.slice(i + 1).some((upper) => lower.valueC > upper.valueC + inversionK),
  );
}

/** Warm water rises: no part of a store is warmer than what lies above it. */
export const storeOrder: Comparison = {
  name: 'store-order',
  looks: 60,
  looksToClear: 1440,
  judge: ({ readings }) => {
    const upwards: readonly Channel[] = ['storeBottomC', 'storeMiddleC', 'storeTopC'];
    const known = upwards.flatMap((channel) => {
      const valueC = saidBy(readings, channel);
      return valueC === null ? [] : [{ channel, valueC }];
    });
    if (known.length < 2) return null;
    if (!isInverted(known)) return agree;
    // One without which the others stand in order; where that does not tell, each of them.
    const odd = known.filter((one) => !isInverted(known.filter((other) => other !== one)));
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
